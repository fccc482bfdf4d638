"""What question 14 draws: the climb, with the height at each step."""

from __future__ import annotations

import shapely

from wardwright.model.opening import Opening
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.questions.outer_rings import outer_rings
from wardwright.trials.climbs import Climb, Step
from wardwright.trials.footholds import footholds


def climb_sketches(house: Site, opening: Opening, climb: Climb) -> tuple[Sketch, ...]:
    """Draw a climb on the plan of the opening's storey.

    Parameters
    ----------
    house : Site
        The bare house.
    opening : Opening
        Where it leads.
    climb : Climb
        Its steps.

    Returns
    -------
    tuple of Sketch
        A line over the things that are climbed, their outlines, and the height above the ground at each.
    """
    storey = house.wall(opening.wall).storey
    areas = [area for step in climb.steps if (area := _area(house, step)) is not None]
    places = [step.place for step in climb.steps]
    found = []
    if areas:
        rings = tuple(ring for area in areas for ring in outer_rings(area))
        line = (_middle(areas[0]), *places)
        found.append(Sketch(role="climb", storey=storey, points=line, rings=rings))
    for step in climb.steps:
        height = f"{step.height_m:.1f} m"
        # What is climbed may stand off the sheet: its name tells what the height is of.
        label = height if step.kind == "opening" else f"{step.name} {height}"
        found.append(Sketch(role="climb-step", storey=storey, points=(step.place,), label=label))
    return tuple(found)


def _area(house: Site, step: Step) -> shapely.Geometry | None:
    there = (
        one
        for one in footholds(house)
        if (one.kind, one.name, one.thing) == (step.kind, step.name, step.thing)
    )
    return next((one.area for one in there), None)


def _middle(area: shapely.Geometry) -> Point2:
    point = area.interpolate(0.5, normalized=True) if area.area == 0.0 else area.representative_point()
    return (float(point.x), float(point.y))
