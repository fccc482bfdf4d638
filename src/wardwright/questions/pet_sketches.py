"""What question 17 draws: the tops that the animal gets onto under the detector's zones, and where it is noticed."""

from __future__ import annotations

import shapely

from wardwright.model.device import Device
from wardwright.model.placement import standing
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.questions.outer_rings import outer_rings
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
    floor = house.storey(at.storey).elevation_m
    found = []
    things: dict[str, list[shapely.Geometry]] = {}
    heights: dict[str, float] = {}
    for under in room.left.reached:
        top = room.left.told.tops[under.number]
        if top.thing is not None:
            things.setdefault(top.thing, []).append(top.area)
            heights[top.thing] = max(heights.get(top.thing, 0.0), top.top_m - floor)
    for thing, areas in things.items():
        area = shapely.union_all(areas)
        if rings := outer_rings(area):
            middle = area.representative_point()
            found.append(
                Sketch(
                    role="perch",
                    storey=at.storey,
                    points=((middle.x, middle.y),),
                    rings=rings,
                    label=f"{heights[thing]:.1f} m",
                )
            )
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
