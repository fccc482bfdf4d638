"""One answer as one picture: the plan with its walk, and the race beside it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from wardwright.documents.content.headline import horizon_of
from wardwright.documents.content.quantities import with_range
from wardwright.documents.content.race import race_strip
from wardwright.documents.drawing.beside import beside
from wardwright.documents.drawing.plan import base_plan, plan_with
from wardwright.documents.drawing.recording import Drawing
from wardwright.documents.drawing.sheet import HALF, sheet_for
from wardwright.documents.drawing.strip import range_line
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.answer import Answer


def race_to_show(answers: Sequence[Answer]) -> Answer | None:
    """The race with a number, lost or close, that has the longest walk on one storey; None if there is none."""
    found = [
        answer for answer in answers if answer.question == 1 and answer.estimate and _walk_m(answer) > 0.0
    ]
    close = [answer for answer in found if answer.verdict in ("bad", "thin")] or found
    return max(close, key=lambda answer: (_walk_m(answer), answer.subject_id), default=None)


def _walk_m(answer: Answer) -> float:
    ways = [sketch.points for sketch in answer.sketches if sketch.role == "walk"]
    return max((sum(math.dist(a, b) for a, b in pairwise(points)) for points in ways), default=0.0)


def race_picture(site: Site, catalogue: Catalogue, answer: Answer, *, also: Sequence[Answer] = ()) -> Drawing:
    """Draw a race on the storey where most of it is walked, with its strip of time.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        Says what each device is.
    answer : Answer
        A race with a number and a walk.
    also : sequence of Answer, default ()
        Other answers whose seen floor is drawn with it.

    Returns
    -------
    Drawing
        One sheet.

    Raises
    ------
    ValueError
        If the answer is no race with a number.
    """
    strip = race_strip(answer, key="strip", horizon_s=horizon_of(catalogue))
    if strip is None or answer.estimate is None:
        raise ValueError(f"the answer about {answer.subject} is no race with a number")
    walk = max((s for s in answer.sketches if s.role == "walk"), key=lambda sketch: len(sketch.points))
    sheet = sheet_for(site, room=HALF)
    base = base_plan(site, catalogue, storey_id=walk.storey, sheet=sheet, ways=(walk,))
    # The region where notice still helps is left to the page: one picture says one thing.
    sketches = tuple(sketch for sketch in answer.sketches if sketch.role != "timely")
    sketches += tuple(s for other in also for s in other.sketches if s.role in ("seen", "possibly-seen"))
    words = with_range(answer.estimate)
    title = f"{site.name}, {base.name}: {answer.subject}"
    told = f"{title}. {answer.measure}: {words}. {strip.description}"
    plan = plan_with(base, sketches, key="plan", title=title, description=told)
    line = range_line(answer.estimate, key="line", description=words)
    heading = (
        ("picture-name", f"{site.name}: {answer.subject}"),
        ("strip-name", answer.measure),
        ("picture-value", words),
    )
    return beside(plan, (line, strip), heading=heading, key="picture", title=title, description=told)
