"""Where one stands to repeat each test, and where the round begins."""

from __future__ import annotations

from collections.abc import Mapping

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.room_shapes import floor_polygon
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot, way_in_spot
from wardwright.rules.pillows import pillows
from wardwright.trials.ways_on_foot import spot_of

STARTS = ("keypad", "control-unit")
"""Where the walk test is begun and ended: the first of these kinds that the house has."""


def test_spots(site: Site) -> Mapping[str, Spot]:
    """Where one stands to test each thing that a test may be about."""
    found: dict[str, Spot] = {}
    spaces = {space.id: space for space in site.spaces}

    def middle(space_id: str | None) -> Spot | None:
        space = spaces.get(space_id or "")
        if space is None:
            return None
        point = floor_polygon(space).representative_point()
        return Spot(space.storey, point.x, point.y)

    for pet in site.pets:
        spot = middle(pet.spaces[0] if pet.spaces else None)
        found |= {} if spot is None else {pet.id: spot}
    for person in site.people:
        spot = middle(person.bed)
        found |= {} if spot is None else {person.id: spot}
    for head in pillows(site):
        found[head.id] = Spot(head.space.storey, *head.at_m)
        # One gets up from one's own pillow.
        found |= {person.id: found[head.id] for person in head.people}
    for opening in site.openings:
        if opening.is_entry_door:
            try:
                found[opening.id] = way_in_spot(site, opening)
            except NotComputable:
                continue  # it leads into none of our spaces: its test is listed without a way
    return found | {device.id: spot_of(site, device) for device in site.devices}


def round_begins_at(site: Site, catalogue: Catalogue) -> str:
    """Id of the keypad, else of the control unit, else of an entry door; empty where there is none."""
    kinds = {device.id: catalogue.sheet(device.sheet).kind for device in site.devices}
    for kind in STARTS:
        named = sorted(name for name, one in kinds.items() if one == kind)
        if named:
            return named[0]
    return min((one.id for one in site.openings if one.is_entry_door), default="")
