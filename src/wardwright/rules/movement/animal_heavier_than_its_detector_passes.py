"""MOV106: an animal too heavy or too tall for the movement detector that sees it."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

import numpy as np

from wardwright.geometry.raster import BoolArray, FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.detection.from_site import Posture, watch
from wardwright.physics.detection.shapes import Fan, Figures, any_in_view
from wardwright.physics.detection.walkers import HEIGHTS_M
from wardwright.rules.ahead import CELL_M, Ahead, ahead_of
from wardwright.rules.animals import Roaming, animals
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import movement_detectors
from wardwright.rules.like_sheets import hung_for, is_alike
from wardwright.rules.perches import on_floor
from wardwright.rules.registry import exactly, rule

ROOM_TO_WALK_M2 = 0.25
"""An animal that is seen on less floor than this is only passing by. [m2] (assumption)"""
POSTURES: tuple[Posture, ...] = ("pet", "crawl", "crouch", "upright")
"""Walkers of rising height: the first that is no lower than the animal stands for it."""


@rule(
    code="MOV106",
    name="animal-heavier-than-its-detector-passes",
    since="0.1",
    stage="trial use",
    mark="derived",  # the limit is the device's own sheet
    severity="must mend",
    sources=(),
    follows="nothing",
    mends_apart=True,
)
def animal_heavier_than_its_detector_passes(
    site: Site, catalogue: Catalogue, *, is_mended: bool = True
) -> Iterator[Finding]:
    """Animals that walk, while the house is set, where a movement detector sees them that is not made for them.

    What it checks
        For each movement detector and each animal, whether the detector may notice something of the animal's height
        on floor where the animal may be, in its own space or through a door that is told to stand open. If so, the
        animal's weight against the weight that the sheet passes, and, where that is enough, its height against the
        lowest zone over that floor.
    Why it matters
        The dog sets it off, the first time that nobody is in. People then set it less, or not at all.
    How to put it right
        Use the sheet given, which passes such an animal, and walk it with the animal. Otherwise keep the animal out
        of what it sees, with a door that is shut whenever the alarm is set, or watch that space by contacts. A lower
        sensitivity alone does not do it.
    What it cannot know
        How the animal behaves alone; two that walk close together; a guest's dog. Weight is the word of sheets: what
        counts is how much of it fills the zones.

    Parameters
    ----------
    site : Site
        The house, its animals and devices.
    catalogue : Catalogue
        The devices' sheets, and what animals are like.
    is_mended : bool, default True
        Whether a sheet that passes the animal is looked for.

    Yields
    ------
    Finding
        One for each detector, about the heaviest animal that it sees, with its weight and what the sheet passes [kg]:
        `must mend` where the sheet names a weight, else `advise`. Where all are light enough, about the one that
        comes farthest into its zones, with its height and the lowest zone [m].

    Raises
    ------
    NotComputable
        If there is no movement detector, or no animal is told of.
    """
    detectors = movement_detectors(site, catalogue)
    household = animals(site, catalogue)
    for device, sheet in detectors:
        yield from _about(site.bare, catalogue, device, sheet=sheet, household=household, is_mended=is_mended)


@lru_cache(maxsize=128)
def _about(
    site: Site,
    catalogue: Catalogue,
    device: Device,
    *,
    sheet: MovementSheet,
    household: tuple[Roaming, ...],
    is_mended: bool,
) -> tuple[Finding, ...]:
    """What is found about one detector, remembered while others move."""
    seen = tuple(
        animal for animal in household if _is_seen(site, catalogue, device, animal=animal, sheet=sheet)
    )
    if not seen:
        return ()
    heaviest = max(seen, key=lambda one: (one.mass_kg, one.pet.id))
    if heaviest.mass_kg <= sheet.passes_animals_up_to_kg:
        return tuple(_too_tall(site, device, sheet=sheet, seen=seen))
    found = _too_heavy(device, sheet=sheet, animal=heaviest)
    if not is_mended:
        return (found,)
    mends = _passing_sheet(site, catalogue, device, sheet=sheet, seen=seen)
    floor = _seen_on(site, catalogue, device, animal=heaviest, sheet=sheet)
    sketches = (_to_nearest(site, device, heaviest, seen=floor),)
    return (found.model_copy(update={"cure": _cure(mends), "mends": mends, "sketches": sketches}),)


def _is_seen(
    site: Site, catalogue: Catalogue, device: Device, *, animal: Roaming, sheet: MovementSheet
) -> bool:
    """Whether the animal is on more of the floor that the detector may notice than it only passes by."""
    ahead = ahead_of(site, device, sheet)
    floor = _in_sight(ahead, animal)
    if not _is_room(floor):
        return False
    # All that is plainly between its rows of zones is in the shape of what it may notice, which takes far longer to
    # work out: so that a hair's difference between the two decides nothing, twice as much has to be.
    if _is_room(floor[_is_between_rows(ahead, floor, animal=animal, sheet=sheet)][::2]):
        return True
    return _is_room(_seen_on(site, catalogue, device, animal=animal, sheet=sheet))


def _in_sight(ahead: Ahead, animal: Roaming) -> FloatArray:
    """Floor where the animal may be, in the fan and in sight past leaves as told. [m]"""
    floor = animal.floor_in(ahead)
    floor = floor[ahead.in_fan(floor)]
    low, high = ahead.level.floor_m, ahead.level.floor_m + animal.height_m
    seen: FloatArray = floor[ahead.heights(floor).seen_length(low, high) > 0.0]
    return seen


def _is_between_rows(ahead: Ahead, floor: FloatArray, *, animal: Roaming, sheet: MovementSheet) -> BoolArray:
    """On which places something of the animal is in reach, in sight and between the highest and lowest row."""
    cells, distance = ahead.cells, ahead.distance(floor)
    bottoms = np.full(len(floor), ahead.level.floor_m)
    height = min(animal.height_m, HEIGHTS_M[_stands_for(animal)])
    tops = np.minimum(bottoms + height, cells.ceiling[cells.grid.cells_of(floor)])
    fan = Fan(ahead.eye, ahead.heading, ahead.half, ahead.depressions, split=0.0)
    figures = Figures(floor, bottoms, tops, width=0.0)
    is_between = any_in_view(fan, figures, heights=ahead.heights(floor), distance=distance)
    return is_between & (distance <= sheet.reach_m)


def _stands_for(animal: Roaming) -> Posture:
    return next((one for one in POSTURES if HEIGHTS_M[one] >= animal.height_m), POSTURES[-1])


def _seen_on(
    site: Site, catalogue: Catalogue, device: Device, *, animal: Roaming, sheet: MovementSheet
) -> FloatArray:
    """Floor where the animal is in sight, and the detector may notice it. [m]"""
    floor = _in_sight(ahead_of(site, device, sheet), animal)
    shape = watch(site, catalogue, device, posture=_stands_for(animal))
    seen: FloatArray = floor[shape.high[shape.grid.cells_of(floor)]]
    return seen


def _is_room(floor: FloatArray) -> bool:
    """Whether some floor is more than is passed by."""
    return CELL_M**2 * len(floor) >= ROOM_TO_WALK_M2


def _too_heavy(device: Device, *, sheet: MovementSheet, animal: Roaming) -> Finding:
    is_told = "passes_animals_up_to_kg" in sheet.model_fields_set
    return animal_heavier_than_its_detector_passes.finding(
        device.id,
        f"{device.name}: {animal.pet.name} walks in its sight and is heavier than its sheet passes",
        cure="",
        severity="must mend" if is_told else "advise",
        estimate=exactly(animal.mass_kg, "kg", animal.mass_basis),
        limit=sheet.passes_animals_up_to_kg,
        related=(animal.pet.id,),
    )


def _to_nearest(site: Site, device: Device, animal: Roaming, *, seen: FloatArray) -> Sketch:
    """From the detector to where the animal is seen nearest to it."""
    place = standing(site, device)
    nearest = seen[int(np.argmin(np.round(np.hypot(seen[:, 0] - place.x_m, seen[:, 1] - place.y_m), 6)))]
    return Sketch(
        role="fault",
        storey=place.storey,
        points=((place.x_m, place.y_m), (float(nearest[0]), float(nearest[1]))),
        label=animal.pet.name,
    )


def _cure(mends: tuple[Mend, ...]) -> str:
    if mends:
        return "Use the sheet given, or keep the animal out of what it sees"
    return "Keep the animal out of what it sees, or watch that space by contacts: no sheet passes it"


def _too_tall(
    site: Site, device: Device, *, sheet: MovementSheet, seen: tuple[Roaming, ...]
) -> Iterator[Finding]:
    found = [on_floor(site, device, sheet, animal=animal) for animal in seen]
    there = [one for one in found if one is not None]
    if not there:
        return
    inside = max(there, key=lambda one: (round(one.over_m, 9), one.animal.pet.id))
    animal = inside.animal
    place = standing(site, device)
    yield animal_heavier_than_its_detector_passes.finding(
        device.id,
        f"{device.name}: {animal.pet.name} is light enough for its sheet, but taller than its lowest zone",
        cure="Keep the animal out of what it sees, or watch that space by contacts",
        severity="advise",
        estimate=exactly(inside.top_m, "m", animal.height_basis),
        limit=inside.zone_m,
        sketches=(
            Sketch(
                role="fault",
                storey=place.storey,
                points=((place.x_m, place.y_m), inside.place),
                label=animal.pet.name,
            ),
        ),
        related=(animal.pet.id,),
    )


def _passing_sheet(
    site: Site, catalogue: Catalogue, device: Device, *, sheet: MovementSheet, seen: tuple[Roaming, ...]
) -> tuple[Mend, ...]:
    """The cheapest sheet that passes all of them, hangs as this one does, and reaches nearly as far."""
    mass = max(animal.mass_kg for animal in seen)
    for row in sorted(catalogue.sheets, key=lambda row: row.cheapest_first):
        table = row.movement
        if table is None or table.passes_animals_up_to_kg < mass:
            continue
        if not is_alike(row, table, device, sheet=sheet):
            continue
        values, hung = hung_for(device, table)
        if all(on_floor(site, hung, table, animal=animal) is None for animal in seen):
            return (Mend(action="replace-device", subject=device.id, values=(("sheet", row.id), *values)),)
    return ()
