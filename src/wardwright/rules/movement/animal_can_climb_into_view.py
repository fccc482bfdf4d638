"""MOV107: an animal that gets up into the zones of a detector that passes it on the floor."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.placement import standing
from wardwright.model.record import Basis
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.animals import Roaming, animals
from wardwright.rules.detector_spots import moved_to_better_spot
from wardwright.rules.finding import Finding
from wardwright.rules.kit import movement_detectors
from wardwright.rules.perches import InView, on_things
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.suggestion import suggestions


@rule(
    code="MOV107",
    name="animal-can-climb-into-view",
    since="0.1",
    stage="trial use",
    mark="derived",  # from its sheet's zones and the animal's height
    severity="advise",
    sources=("own",),
    follows="nothing",
)
def animal_can_climb_into_view(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Animals that jump onto furniture, or go up stairs, into the zones of a detector that passes them on the floor.

    What it checks
        For each movement detector whose sheet passes an animal of that weight: every thing that the animal gets onto
        by successive jumps, each within its height and its gap, from the floors where it may be, shelves whatever
        their height for one that climbs, and every stair. How high the animal's top is there, against the lowest
        zone that passes over that place, in sight and in reach.
    Why it matters
        A detector that passes animals does so by looking over them. From the sofa's back or the fifth stair the cat
        is where a person would be, and rings.
    How to put it right
        Move it to the place given, from which no zone passes over such a place so low. Otherwise move the thing out
        of its view, keep the animal out, or watch that space by contacts.
    What it cannot know
        The real layout of its zones, for sheets state a typical one; what the animal likes; a window board, a
        curtain rail, an open drawer; things that are moved after the survey.

    Parameters
    ----------
    site : Site
        The house, its fixtures, stairs, animals and devices.
    catalogue : Catalogue
        The devices' sheets, and how high animals jump.

    Yields
    ------
    Finding
        One for each detector, about the animal and thing that come farthest in, with the height of the animal's top
        and of the lowest zone there [m].

    Raises
    ------
    NotComputable
        If there is no movement detector, or no animal is told of.
    """
    this = animal_can_climb_into_view
    detectors = movement_detectors(site, catalogue)
    household = animals(site, catalogue)
    for device, sheet in detectors:
        inside = _farthest_in(site, device, sheet, household=household)
        if inside is None:
            continue

        def passes_all(moved: Device, sheet: MovementSheet = sheet) -> bool:
            return _farthest_in(site, moved, sheet, household=household) is None

        mends = moved_to_better_spot(site, device, sheet, accepts=passes_all)
        new = suggestions(site, mends)
        place = standing(site, device)
        yield this.finding(
            device.id,
            f"{device.name}: {inside.animal.pet.name} on {inside.on} comes into its zones",
            cure="Move it to the place given"
            if mends
            else "Move that out of its view, keep the animal out, or watch that space by contacts",
            estimate=exactly(inside.top_m, "m", _basis(site, inside)),
            limit=inside.zone_m,
            mends=mends,
            sketches=(
                Sketch(
                    role="fault",
                    storey=place.storey,
                    points=((place.x_m, place.y_m), inside.place),
                    label=inside.on,
                ),
                *new,
            ),
            related=(inside.animal.pet.id, *(() if inside.subject is None else (inside.subject,))),
        )


def _farthest_in(
    site: Site, device: Device, sheet: MovementSheet, *, household: tuple[Roaming, ...]
) -> InView | None:
    """The animal, of those that its sheet passes on the floor, that comes farthest into its zones."""
    found = [
        on_things(site, device, sheet, animal=animal)
        for animal in household
        if animal.mass_kg <= sheet.passes_animals_up_to_kg
    ]
    there = [one for one in found if one is not None]
    return max(there, key=lambda one: (round(one.over_m, 9), one.animal.pet.id), default=None)


def _basis(site: Site, inside: InView) -> Basis:
    bases = [one.basis_of("height_m") for one in site.fixtures if one.id == inside.subject]
    return weakest(inside.animal.height_basis, *bases)
