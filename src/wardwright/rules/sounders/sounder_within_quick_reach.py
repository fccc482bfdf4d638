"""SND101: an inside sounder that is broken before it has sounded long."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.entry_routes import rooms_on_the_way
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import some_of
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.sounder_spots import (
    BESIDE_UNIT_M,
    OUT_OF_HAND_M,
    distance_to_unit,
    sounder_spot,
)
from wardwright.rules.suggestion import suggestions
from wardwright.rules.wall_spots import room_of


@rule(
    code="SND101",
    name="sounder-within-quick-reach",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def sounder_within_quick_reach(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Inside sounders beside the control unit, or on the way in and in reach of a hand.

    What it checks
        For each inside sounder: whether it hangs within 2 m of a control unit; whether it hangs lower than 2.4 m in
        a room on the way from an entry door to the keypad, with no other sounder elsewhere. Both distances are
        assumptions.
    Why it matters
        On the way in nothing sounds until the entry time is over, so the sounder is reached before its first note.
        Beside the unit its noise shows the way to it, and one visit ends both.
    How to put it right
        Hang it on the landing or in another room, off the way in; the finding carries such a place. Or add an extra
        sounder out of quick reach.
    What it cannot know
        Whether it goes on by itself when it is torn off; how much the doors between take from its noise.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each such sounder, with its distance to the control unit where that is the fault [m].

    Raises
    ------
    NoneOfAKind
        If there is no sounder.
    NotComputable
        If all of them are outside.
    """
    this = sounder_within_quick_reach
    every = some_of(site, catalogue, "sounder", cure="Add the sounders that are planned")
    inside = [device for device, sheet in every if not sheet.is_outside]
    if not inside:
        raise NotComputable("no inside sounder", cure="Add the inside sounder that is planned")
    on_way = rooms_on_the_way(site, catalogue) or frozenset()
    reached = {one.id for one in inside if _is_on_way(site, one, on_way)}
    is_one_elsewhere = any(device.id not in reached for device, _ in every)
    for sounder in inside:
        place = standing(site, sounder)
        to_unit = distance_to_unit(site, catalogue, place)
        is_beside = to_unit <= BESIDE_UNIT_M
        if not is_beside and (sounder.id not in reached or is_one_elsewhere):
            continue
        spot = sounder_spot(site, catalogue, near=place, height_m=place.height_m)
        mends = (
            ()
            if spot is None
            else (Mend(action="move-device", subject=sounder.id, values=spot.values(place.height_m)),)
        )
        new = suggestions(site, mends)
        yield this.finding(
            sounder.id,
            f"{sounder.name}: "
            + (
                "it hangs beside the control unit"
                if is_beside
                else "it hangs on the way in, in reach of a hand"
            ),
            cure=f"Move it to the place given, in {new[0].label}" if new else "Add one out of quick reach",
            estimate=exactly(to_unit, "m", weakest(sounder.basis_of("mount"))) if is_beside else None,
            limit=BESIDE_UNIT_M if is_beside else None,
            mends=mends,
            sketches=(
                Sketch(
                    role="fault", storey=place.storey, points=((place.x_m, place.y_m),), label=sounder.name
                ),
                *new,
            ),
        )


def _is_on_way(site: Site, sounder: Device, on_way: frozenset[str]) -> bool:
    place = standing(site, sounder)
    room = room_of(site, place.storey, (place.x_m, place.y_m))
    return place.height_m < OUT_OF_HAND_M and any(space.id in on_way for space in room)
