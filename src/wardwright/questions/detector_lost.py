"""Question 12, one detector lost: which ways in are still noticed, and which does nothing notice any more?"""

from __future__ import annotations

from functools import lru_cache

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.estimate import Estimate
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.walking.from_site import Spot
from wardwright.questions.answer import Answer, Verdict
from wardwright.questions.loss_mends import second_eye
from wardwright.questions.time_in_hand import likely_hand
from wardwright.trials.alarm import Alarm, alarm_of
from wardwright.trials.likely_race import likely_race
from wardwright.trials.single_loss import Noticing, no_longer_noticed
from wardwright.trials.ways_in import WayIn
from wardwright.trials.ways_on_foot import route_to

NUMBER = 12
MEASURE = "ways in that something still notices without it"


def detector_lost(site: Site, catalogue: Catalogue, lost: Device, *, of: Noticing) -> Answer:
    """What is no longer noticed without one detector.

    Parameters
    ----------
    site : Site
        As an intruder meets it.
    catalogue : Catalogue
        Sheets and figures.
    lost : Device
        The detector.
    of : Noticing
        Which devices notice on each way in.

    Returns
    -------
    Answer
        Its number is of openings; the low end leaves out those that are noticed too late without it.
    """
    gone = no_longer_noticed(of, lost.id)
    openings = {way.opening.id: way.opening for way in gone}
    late = [name for name in _too_late(site, catalogue, lost, of=of) if name not in openings]
    notes = []
    if openings:
        notes.append("nothing notices any more: " + ", ".join(one.name for one in openings.values()))
    if late:
        notes.append("noticed too late without it: " + ", ".join(site.opening(one).name for one in late))
    if not any(lost.id in by for _, by in of.by_way):
        notes.append("it notices on no fastest way to the control unit")
    elif not openings and not late:
        notes.append("others notice on every way that it does")
    verdict: Verdict = "bad" if openings else "thin" if late else "good"
    still = {way.opening.id for way, by in of.by_way if by} - openings.keys()
    return Answer(
        question=NUMBER,
        subject=lost.name,
        subject_id=lost.id,
        measure=MEASURE,
        estimate=Estimate(
            value=float(len(still)),
            low=float(len(still - set(late))),
            high=float(len(still)),
            unit="openings",
            basis="default",
        ),
        verdict=verdict,
        notes=(*notes, "sounding and sending go on"),
        mends=() if not gone else second_eye(site, catalogue, gone[0], lost=lost),
        sketches=_sketches(site, catalogue, lost, gone=gone, of=of),
    )


def _too_late(site: Site, catalogue: Catalogue, lost: Device, *, of: Noticing) -> list[str]:
    """Ids of openings whose race is won in the likely case, and lost without one detector."""
    alarm = alarm_of(site, catalogue)
    without = alarm._replace(heard=tuple(pair for pair in alarm.heard if pair[0].id != lost.id))
    found = []

    def hand(one: Alarm, way: WayIn) -> float:
        return likely_hand(likely_race(site.bare, catalogue, one, way=way, goal=of.goal), catalogue)

    for way, by in of.by_way:
        if lost.id not in by or way.opening.id in found:
            continue
        try:
            # Where it is lost as it is, it is not asked what would come of one detector less.
            if hand(alarm, way) > 0.0 >= hand(without, way):
                found.append(way.opening.id)
        except NotComputable:
            continue  # no way on foot leads there: question 1 says so
    return found


def _sketches(
    site: Site, catalogue: Catalogue, lost: Device, *, gone: tuple[WayIn, ...], of: Noticing
) -> tuple[Sketch, ...]:
    at = standing(site, lost)
    found = [Sketch(role="fault", storey=at.storey, points=((at.x_m, at.y_m),), label=f"without {lost.name}")]
    seen: set[str] = set()
    for way in gone:
        if way.opening.id in seen:
            continue
        seen.add(way.opening.id)
        found += _unnoticed(site.bare, catalogue, way, goal=of.goal)
    return tuple(found)


@lru_cache(maxsize=256)
def _unnoticed(house: Site, catalogue: Catalogue, way: WayIn, *, goal: Spot) -> tuple[Sketch, ...]:
    """The way on foot from a way in, one line for each storey."""
    route = route_to(house, catalogue, way=way, goal=goal)
    if route is None:
        return ()
    found = []
    for storey in dict.fromkeys(route.storeys):
        points = [
            (float(x), float(y))
            for (x, y), on in zip(route.points.tolist(), route.storeys, strict=True)
            if on == storey
        ]
        chosen = points[::4] if (len(points) - 1) % 4 == 0 else [*points[::4], points[-1]]
        if len(chosen) > 1:
            found.append(Sketch(role="unnoticed", storey=storey, points=tuple(chosen)))
    return tuple(found)
