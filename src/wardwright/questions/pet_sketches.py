"""What question 17 draws: the tops that the animal gets onto under the detector's zones, and where it is noticed."""

from __future__ import annotations

from functools import lru_cache

import shapely

from wardwright.model.device import Device
from wardwright.model.placement import standing
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.questions.outer_rings import outer_rings
from wardwright.rules.animal_tops import tops_of
from wardwright.trials.pet_room import PetRoom


def pet_sketches(house: Site, device: Device, room: PetRoom, *, is_good: bool) -> tuple[Sketch, ...]:
    """Draw one animal before one detector.

    Parameters
    ----------
    house : Site
        The bare house.
    device : Device
        The detector.
    room : PetRoom
        The animal that it can least stay with.
    is_good : bool
        Whether it can stay; then the tops alone are drawn.

    Returns
    -------
    tuple of Sketch
        Each top with its height; a line from the detector to where the zones leave least room.
    """
    at = standing(house, device)
    found: list[Sketch] = []
    things: dict[str, list[int]] = {}
    for under in room.left.reached:
        top = room.left.told.tops[under.number]
        if top.thing is not None:
            things.setdefault(top.thing, []).append(under.number)
    for numbers in things.values():
        found.extend(_perch(house, at.storey, tuple(numbers)))
    under_least = room.least_under
    if not is_good and under_least is not None and room.least is not None:
        role = "notice" if room.trips_on is not None else "fault"
        here: Point2 = under_least.place
        found.append(Sketch(role="pet-line", storey=at.storey, points=((at.x_m, at.y_m), here)))
        label = f"{room.animal.pet.name} on {room.least.name}"
        found.append(
            Sketch.model_validate({"role": role, "storey": at.storey, "points": (here,), "label": label})
        )
    return tuple(found)


@lru_cache(maxsize=256)
def _perch(house: Site, storey: str, numbers: tuple[int, ...]) -> tuple[Sketch, ...]:
    """Some tops of one thing, whichever detector's zones pass over them."""
    tops = [tops_of(house)[number] for number in numbers]
    area = shapely.union_all([top.area for top in tops])
    rings = outer_rings(area)
    if not rings:
        return ()
    middle = area.representative_point()
    height = max(0.0, *(top.top_m - house.storey(storey).elevation_m for top in tops))
    here: Point2 = (middle.x, middle.y)
    return (Sketch(role="perch", storey=storey, points=(here,), rings=rings, label=f"{height:.1f} m"),)
