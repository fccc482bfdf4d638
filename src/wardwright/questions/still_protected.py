"""What the night part still protects: each way in raced against the devices that are active in it."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.errors import NotComputable
from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.estimate import Estimate
from wardwright.model.opening import Opening
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.questions.answer import Answer, PartAnswer, Verdict, about_the_site
from wardwright.rules.kit import NIGHT
from wardwright.trials.alarm import Alarm, alarm_of, as_met
from wardwright.trials.draws import estimate_of
from wardwright.trials.race import Race, first_notice, race_against
from wardwright.trials.watchers import control_units
from wardwright.trials.ways_in import WayIn, by_opening, ways_in
from wardwright.trials.ways_on_foot import spot_of

MEASURE = "openings that something still notices with the night part set"


class Watched(NamedTuple):
    """How coming in by one opening is noticed while a part is set, in the manner that is noticed last."""

    opening: Opening
    race: Race | None
    """None: it is not known, for want of a way on foot."""

    @property
    def is_noticed(self) -> bool:
        """Whether anything notices in the likely case."""
        return self.race is not None and bool(np.isfinite(self.race.first_notice[0]))

    @property
    def is_surely_noticed(self) -> bool:
        """Whether anything notices in every row of the cases."""
        return self.race is not None and bool(np.isfinite(self.race.first_notice).all())


def watched_at_night(site: Site, catalogue: Catalogue) -> tuple[Watched, ...]:
    """Race every way in to the control unit against the night part.

    Parameters
    ----------
    site : Site
        The house, its devices and its zones.
    catalogue : Catalogue
        Sheets and figures.

    Returns
    -------
    tuple of Watched
        One for each opening that is a way in.

    Raises
    ------
    NotComputable
        If there is no control unit to go to.
    """
    units = control_units(site, catalogue)
    if not units:
        raise NotComputable("no control unit")
    alarm = alarm_of(as_met(site, catalogue), catalogue, NIGHT)
    ways = by_opening(ways_in(site, catalogue)[0])
    return _every_way(site.bare, catalogue, alarm, ways=ways, goal=spot_of(site, units[0]))


@lru_cache(maxsize=128)
def _every_way(
    house: Site, catalogue: Catalogue, alarm: Alarm, *, ways: tuple[tuple[WayIn, ...], ...], goal: Spot
) -> tuple[Watched, ...]:
    return tuple(_watched(house, catalogue, alarm, manners=manners, goal=goal) for manners in ways)


def _watched(
    house: Site, catalogue: Catalogue, alarm: Alarm, *, manners: tuple[WayIn, ...], goal: Spot
) -> Watched:
    try:
        races = [race_against(house, catalogue, alarm, way=way, goal=goal) for way in manners]
    except NotComputable:
        return Watched(manners[0].opening, None)
    return Watched(
        manners[0].opening, max(races, key=lambda one: (float(one.first_notice[0]), one.way.manner))
    )


@lru_cache(maxsize=256)
def openings_noticed_by(
    house: Site, catalogue: Catalogue, devices: tuple[Device, ...], *, goal: Spot
) -> Estimate:
    """How many openings some detectors notice somebody come in by: `openings_noticed` without the races.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        Sheets and figures.
    devices : tuple of Device
        The detectors, in the order of ids, whose zones give an alarm however they behave.
    goal : Spot
        The control unit, where the intruder goes.

    Returns
    -------
    Estimate
        The low end counts those that are noticed whatever the paces and reaches. [openings]
    """
    noticed = [
        _first_notice(house, catalogue, devices, manners=manners, goal=goal)
        for manners in by_opening(ways_in(house, catalogue)[0])
    ]
    likely = sum(bool(np.isfinite(one[0])) for one in noticed)
    return _counted(likely, sum(bool(np.isfinite(one).all()) for one in noticed))


def _first_notice(
    house: Site, catalogue: Catalogue, devices: tuple[Device, ...], *, manners: tuple[WayIn, ...], goal: Spot
) -> FloatArray:
    """When coming in by one opening is noticed, in the manner that is noticed last; never where there is no way."""
    try:
        firsts = [
            (first_notice(house, catalogue, devices, way=way, goal=goal), way.manner) for way in manners
        ]
    except NotComputable:
        return np.array([np.inf])
    return max(firsts, key=lambda one: (float(one[0][0]), one[1]))[0]


def openings_noticed(each: tuple[Watched, ...]) -> Estimate:
    """How many openings something notices somebody come in by.

    Parameters
    ----------
    each : tuple of Watched
        Every way in.

    Returns
    -------
    Estimate
        The low end counts those that are noticed whatever the paces and reaches. [openings]
    """
    return _counted(sum(one.is_noticed for one in each), sum(one.is_surely_noticed for one in each))


def _counted(noticed: int, surely: int) -> Estimate:
    low = float(min(surely, noticed))
    return Estimate(value=float(noticed), low=low, high=float(noticed), unit="openings", basis="default")


def still_protected(site: Site, catalogue: Catalogue, *, number: int, notes: tuple[str, ...]) -> Answer:
    """What stays protected while the night part is set.

    Parameters
    ----------
    site : Site
        The house, its devices and its zones.
    catalogue : Catalogue
        Sheets and figures.
    number : int
        Of the question.
    notes : tuple of str
        What else is to be said about the part.

    Returns
    -------
    Answer
        `bad`: nothing is noticed. `thin`: some openings are not. Each opening with the seconds to its first notice.
    """
    try:
        each = watched_at_night(site, catalogue)
    except NotComputable as reason:
        bare = about_the_site(number, MEASURE, site=site, reason=str(reason))
        return bare.model_copy(update={"notes": notes})
    if not each:
        bare = about_the_site(number, MEASURE, site=site, reason="no way in")
        return bare.model_copy(update={"notes": notes})
    estimate = openings_noticed(each)
    verdict: Verdict = "bad"
    if estimate.value > 0.0:
        verdict = "good" if estimate.low == float(len(each)) else "thin"
    unnoticed = [one.opening.name for one in each if one.race is not None and not one.is_noticed]
    said = (f"nothing in the night part notices: {', '.join(unnoticed)}",) if unnoticed else ()
    return Answer(
        question=number,
        subject=site.name,
        subject_id="site",
        measure=MEASURE,
        estimate=estimate,
        verdict=verdict,
        parts=tuple(_part(site, one) for one in each),
        notes=(*said, *notes),
    )


def _part(site: Site, one: Watched) -> PartAnswer:
    name, race = one.opening.name, one.race
    if race is None:
        return PartAnswer(name=name, estimate=None, reason="no way on foot from it to the control unit")
    if race.first_watcher is None or not one.is_noticed:
        return PartAnswer(name=name, estimate=None, reason="nothing in the night part notices")
    by = site.device(race.first_watcher).name
    seconds = np.where(np.isfinite(race.first_notice), race.first_notice, race.broken)
    return PartAnswer(
        name=f"{name}, noticed by {by} after", estimate=estimate_of(seconds, race.cases, unit="s")
    )
