"""The race from one way in to one goal: first notice, sounder, message, against reach and break."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wardwright.errors import NotComputable
from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.programme import Behaviour, Programme
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import BODY_RADIUS_M, Route, Spot
from wardwright.trials.draws import Cases, Input, cases_of
from wardwright.trials.watchers import REACH_SHARES, Watcher, has_sounder, watchers_on
from wardwright.trials.ways_in import WayIn, once_in
from wardwright.trials.ways_on_foot import Progress, progress_of, route_to, shut_doors
from wardwright.trials.zone_response import response_times


class Race(NamedTuple):
    """Times of one race in every row of `cases`; infinite where a thing never happens. [s]"""

    way: WayIn
    route: Route
    cases: Cases
    first_notice: FloatArray
    first_watcher: str | None
    """Id of the device that notices first in the likely case."""
    first_index: int | None
    """The point of the route where it does."""
    sounder: FloatArray | None
    """None: there is no sounder."""
    message: FloatArray
    reached: FloatArray
    broken: FloatArray
    message_waits: bool
    """Whether the abort delay counted in the likely case."""


def _clock(progress: Progress, index: NDArray[np.int64], cases: Cases, *, climbs: bool) -> FloatArray:
    rows = cases.rows
    pace = rows[PACE]
    start = rows[CLIMB] if climbs else 0.0
    return (
        start
        + progress.flat[index] / pace
        + progress.stairs[index] / (pace * rows[ON_STAIRS])
        + progress.doors[index] * rows[DOORS]
    )


PACE = "pace"
ON_STAIRS = "pace on stairs"
DOORS = "inside doors"
CLIMB = "climbing in"
BREAK = "break"
RADIO = "radio"
SOUNDER = "sounder"
MESSAGE = "message"


def _inputs(way: WayIn, watchers: Sequence[Watcher], catalogue: Catalogue) -> tuple[Input, ...]:
    named = [
        (PACE, "intruder's pace", "pace-hurried"),
        (ON_STAIRS, "pace on stairs", "stairs-share"),
        (DOORS, "opening inside doors", "pass-door"),
        (BREAK, "breaking the control unit", "break-control-unit"),
        (SOUNDER, "sounder's start", "sounder-start"),
        (MESSAGE, "message leaving", "message-time"),
    ]
    if way.climbs:
        named.append((CLIMB, "climbing in", "climb-in"))
    if watchers:
        named.append((RADIO, "radio to the control unit", "radio-delay"))
    for watcher in watchers:
        if watcher.noticing is not None:
            device = watcher.device
            named.append((f"reach {device.id}", f"reach of {device.name}", "detector-reach"))
            named.append((f"walked {device.id}", f"walked before {device.name}", "walked-to-notice"))
    return tuple(Input(key, name, catalogue.figure(figure), "default") for key, name, figure in named)


def _noticed_index(
    watcher: Watcher, walked: FloatArray, cases: Cases
) -> tuple[NDArray[np.int64], FloatArray]:
    """Index on the route where a movement detector notices in each row, and 0 or infinity to add."""
    noticing = watcher.noticing
    if noticing is None:
        raise ValueError(watcher.device.id)
    reach = cases.rows[f"reach {watcher.device.id}"]
    nearest = np.abs(reach[:, np.newaxis] - np.asarray(REACH_SHARES)).argmin(axis=1)
    noticed = np.asarray(noticing.noticed_m, dtype=np.float64)[nearest]
    entered = min(noticing.entered_m, float(np.min(noticing.noticed_m)))
    lag = np.where(np.isfinite(noticed), noticed - entered, 0.0)
    place = entered + lag * cases.rows[f"walked {watcher.device.id}"]
    # Beyond the end of the route it is never walked; at its very end it still counts.
    missed = ~np.isfinite(noticed) | (place > walked[-1] + 1e-9)
    index = np.clip(np.searchsorted(walked, np.where(missed, 0.0, place)), 0, len(walked) - 1)
    return index, np.where(missed, np.inf, 0.0)


def _after_shut_doors(index: NDArray[np.int64], route: Route, plan: FloatArray) -> NDArray[np.int64]:
    """Nobody is noticed through a leaf: a notice by a body that only reaches into a shut door is after it opens."""
    for leg in shut_doors(route):
        reaches_in = (index <= leg.first) & (plan[index] > plan[leg.first] - BODY_RADIUS_M)
        index = np.where(reaches_in, leg.last, index)
    return index


def race(site: Site, catalogue: Catalogue, *, way: WayIn, goal: Spot, part: str = "full") -> Race:
    """Run one race over all rows of its uncertain inputs.

    Parameters
    ----------
    site : Site
        The site.
    catalogue : Catalogue
        Sheets and figures.
    way : WayIn
        Where the intruder comes in; the clock starts when it is open or the glass is out.
    goal : Spot
        Where the intruder goes, by the fastest way.
    part : str, default "full"
        What is set.

    Returns
    -------
    Race
        All times. [s]

    Raises
    ------
    NotComputable
        If no way on foot leads from the way in to the goal.
    """
    watchers = watchers_on(site, catalogue, way=way, goal=goal, part=part)
    sounds = has_sounder(site, catalogue)
    # Manners that differ in nothing that is heard are one race.
    run = _run(
        site.bare,
        catalogue,
        goal,
        way=once_in(way),
        watchers=watchers,
        programme=site.programme,
        sounds=sounds,
    )
    return run._replace(way=way)


@lru_cache(maxsize=2048)
def _run(
    house: Site,
    catalogue: Catalogue,
    goal: Spot,
    *,
    way: WayIn,
    watchers: tuple[Watcher, ...],
    programme: Programme,
    sounds: bool,
) -> Race:
    route = route_to(house, catalogue, way=way, goal=goal)
    if route is None:
        raise NotComputable(f"no way on foot from {way.opening.name} to the place asked for")
    cases = cases_of(_inputs(way, watchers, catalogue))
    progress = progress_of(route)
    last = np.full(cases.total, len(progress.plan) - 1)
    reached = _clock(progress, last, cases, climbs=way.climbs)
    broken = reached + cases.rows[BREAK]
    signals = np.full((len(watchers), cases.total), np.inf)
    indexes = np.zeros((len(watchers), cases.total), dtype=np.int64)
    for i, watcher in enumerate(watchers):
        if watcher.at_index == -1:
            signals[i] = 0.0
        elif watcher.at_index is not None:
            indexes[i] = watcher.at_index
            signals[i] = _clock(progress, indexes[i], cases, climbs=way.climbs)
        else:
            indexes[i], missed = _noticed_index(watcher, progress.plan, cases)
            indexes[i] = _after_shut_doors(indexes[i], route, progress.plan)
            signals[i] = _clock(progress, indexes[i], cases, climbs=way.climbs) + missed
    never = np.full(cases.total, np.inf)
    counted = [i for i, watcher in enumerate(watchers) if watcher.behaviour.alarms]
    heard = _Heard(never, never, never, None, waits=False)
    if counted:
        chosen = tuple(watchers[i].behaviour for i in counted)
        heard = _heard(signals[counted], chosen, programme, delay=cases.rows[RADIO])
    first = None if heard.first is None else counted[heard.first]
    return Race(
        way=way,
        route=route,
        cases=cases,
        first_notice=heard.notice,
        first_watcher=None if first is None else watchers[first].device.id,
        first_index=None if first is None else int(indexes[first, 0]),
        sounder=heard.alarm + cases.rows[SOUNDER] if sounds else None,
        message=heard.due + cases.rows[MESSAGE],
        reached=reached,
        broken=broken,
        message_waits=heard.waits,
    )


class _Heard(NamedTuple):
    notice: FloatArray
    alarm: FloatArray
    due: FloatArray
    first: int | None
    waits: bool


def _heard(
    signals: FloatArray, behaviours: tuple[Behaviour, ...], programme: Programme, *, delay: FloatArray
) -> _Heard:
    """What the control unit makes of the signals that reach it."""
    first = int(signals[:, 0].argmin()) if np.isfinite(signals[:, 0]).any() else None
    alarm, due = response_times(signals + delay, behaviours, programme)
    waits = False
    if programme.abort_delay_s > 0:
        at_once = programme.model_copy(update={"abort_delay_s": 0.0})
        waits = bool(due[0] > response_times(signals + delay, behaviours, at_once)[1][0])
    return _Heard(signals.min(axis=0), alarm, due, first, waits)
