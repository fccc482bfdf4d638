"""Question 13, outside: what reaches the boundary, the street and the neighbours."""

from __future__ import annotations

from functools import lru_cache

import shapely

from wardwright.model.catalogue import Catalogue
from wardwright.model.limits import Limit
from wardwright.model.record import Point2
from wardwright.model.room_shapes import hull_of, indoors
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.sound.from_site import Sounding
from wardwright.questions.answer import Answer, unanswered
from wardwright.questions.heard_at_pillows import NUMBER, verdict_over
from wardwright.questions.level_sketches import figure_at
from wardwright.rules.limits import cited, limit_for
from wardwright.rules.outside_ears import HeardThere, heard_outside, outside_ears

MEASURE = "loudest level there when the intruder alarm sounds, windows shut"
OFF_THE_HOUSE_M = 0.8
"""Where a level that is heard farther off is written: so far from the house, toward it. [m] (assumption)"""


def answers_outside(site: Site, catalogue: Catalogue, every: tuple[Sounding, ...]) -> tuple[Answer, ...]:
    """One answer for each line outside along which somebody listens."""
    if not outside_ears(site):
        reason = "not computable: neither boundary, road nor a neighbour's building is drawn"
        return (
            unanswered(NUMBER, MEASURE, subject="street and neighbours", subject_id="outside", reason=reason),
        )
    limit = limit_for(catalogue, "heard-outside", site)
    return tuple(
        _answer(site.bare, catalogue, heard, limit=limit, sounding_s=site.programme.sounding_time_s)
        for heard in heard_outside(site, catalogue, every)
    )


@lru_cache(maxsize=256)
def _answer(
    site: Site, catalogue: Catalogue, heard: HeardThere, *, limit: Limit, sounding_s: float
) -> Answer:
    level = heard.level
    lowest = min(site.storeys, key=lambda s: (abs(s.elevation_m - site.ground.level_m), s.id))
    words = f"at {'the ' if heard.place.id in ('boundary', 'street') else ''}{heard.place.name}"
    sketches: tuple[Sketch, ...] = ()
    if level is not None:
        sketches = (figure_at(lowest.id, _written_at(site, heard.at_m), level, words=words),)
    return Answer(
        question=NUMBER,
        subject=heard.place.name,
        subject_id=heard.place.id,
        measure=MEASURE,
        estimate=level,
        reason=None if level is not None else "nothing of it is heard there",
        verdict=verdict_over(level, limit),
        notes=(
            f"{limit.value:g} dBA is a figure of our own: {limit.note}"
            if limit.source == "own"
            else f"{limit.value:g} dBA: {cited(catalogue, limit)}",
            f"it sounds for {sounding_s / 60.0:g} min at most; how long a place allows is a rule of its own",
            "houses across the street and trees throw sound back or keep it off: they are left out",
        ),
        sketches=sketches,
    )


@lru_cache(maxsize=256)
def _written_at(site: Site, at: Point2) -> Point2:
    """A place beside the house toward where it is heard, so that it is on the sheet."""
    ring = hull_of(indoors(site))
    if not ring:
        return at
    house = shapely.Polygon(ring).buffer(OFF_THE_HOUSE_M)
    point = shapely.Point(at)
    if house.covers(point):
        return at
    x, y = shapely.get_coordinates(shapely.shortest_line(house, point))[0]
    return (float(x), float(y))
