"""What would mend a way in: locks first, then the alarm, each with what it would bring."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.questions.changes_tried import Trial, Values, changes_for
from wardwright.questions.time_in_hand import hand_estimate, likely_hand
from wardwright.rules.finding import Mend
from wardwright.trials.alarm import Heard, alarm_of
from wardwright.trials.likely_race import likely_race
from wardwright.trials.race import Race, race_against
from wardwright.trials.watchers import control_units, notices_on
from wardwright.trials.ways_in import WayIn, leads_outside
from wardwright.trials.ways_on_foot import spot_of

WORTH_S = 0.5
"""A mend is named if it brings at least this. [s] (assumption)"""
WEAK_LOCK_S = 60.0
"""An opening that likely holds less than this is named for its lock first. [s] (assumption)"""
HAIR_S = 1e-6
"""Time in hand that rounding may cost at most. [s]"""
BETTER_LOCK = "force-rc2"
"""The figure a better lock is held against."""


class _Tried(NamedTuple):
    """A change that is worth naming in the likely case."""

    values: Values
    trial: Trial
    likely: float
    """The time in hand after it. [s]"""
    worst: WayIn
    """In this manner."""


def mends_for(
    site: Site, catalogue: Catalogue, *, ways: Sequence[WayIn], worst: Race, now: Estimate
) -> tuple[Mend, ...]:
    """Cures for one opening, the better ones first.

    Parameters
    ----------
    site : Site
        As it is.
    catalogue : Catalogue
        Sheets and figures.
    ways : sequence of WayIn
        All manners of coming in by the opening.
    worst : Race
        The race of the worst of them.
    now : Estimate
        The time in hand as it is. [s]

    Returns
    -------
    tuple of Mend
        Locks and lights where the opening is weak; then changes to the alarm that were tried on the model and
        bring time, most first. Each is tried on all manners, as asking again would.
    """
    goal, heard = spot_of(site, control_units(site, catalogue)[0]), alarm_of(site, catalogue).heard
    silent = _silent_on(site.bare, catalogue, ways, heard=heard, goal=goal)
    # A hair for rounding: what is worth naming, and which is best, is judged by the race run whole.
    at_least = now.value + WORTH_S - HAIR_S
    tried: dict[tuple[str, str], list[_Tried]] = {}
    for action, subject, values, change in changes_for(site, catalogue, worst.way, now=now):
        # Devices that nobody passes may be moved without a change being tried again.
        trial = change.without(silent) if change.goal == goal else change
        after = _likely_after(site.bare, catalogue, tuple(ways), trial=trial, at_least=at_least)
        if after is not None:
            tried.setdefault((action, subject), []).append(_Tried(values, trial, *after))
    found = []
    for (action, subject), alike in tried.items():
        gain, best = _best(site.bare, catalogue, alike)
        if gain.value - now.value >= WORTH_S:
            found.append((-gain.value, Mend(action=action, subject=subject, values=best.values, gain=gain)))
    found.sort(key=lambda pair: (pair[0], pair[1].action, pair[1].subject))
    return (*locks_and_lights(site, catalogue, worst.way), *(mend for _, mend in found))


def _silent_on(
    house: Site, catalogue: Catalogue, ways: Sequence[WayIn], *, heard: Heard, goal: Spot
) -> frozenset[str]:
    """Ids of the devices that notice on none of some ways."""
    return frozenset(
        device.id
        for device, _ in heard
        if all(notices_on(house, catalogue, device, way=way, goal=goal) is None for way in ways)
    )


def _best(house: Site, catalogue: Catalogue, alike: Sequence[_Tried]) -> tuple[Estimate, _Tried]:
    """Of changes of one kind to one thing that which brings most, the first of those that bring as much."""
    most = max(one.likely for one in alike) - 2.0 * HAIR_S
    whole = [
        (_after(house, catalogue, one.worst, trial=one.trial), one) for one in alike if one.likely >= most
    ]
    return max(whole, key=lambda pair: pair[0].value)


@lru_cache(maxsize=512)
def _likely_after(
    house: Site, catalogue: Catalogue, ways: tuple[WayIn, ...], *, trial: Trial, at_least: float
) -> tuple[float, WayIn] | None:
    """The likely time in hand of the worst manner after a change [s]; None: not to be worked out, or too little."""
    alarm, goal = trial
    hands = []
    try:
        for way in ways:
            likely = likely_race(house, catalogue, alarm, way=way, goal=goal)
            hands.append((likely_hand(likely, catalogue), way.manner, way))
            if hands[-1][0] < at_least:
                return None
    except NotComputable:
        return None
    # The manner that is worst in the likely case decides: only that race is run whole.
    hand, _, worst = min(hands, key=lambda one: one[:2])
    return hand, worst


@lru_cache(maxsize=512)
def _after(house: Site, catalogue: Catalogue, way: WayIn, *, trial: Trial) -> Estimate:
    """The time in hand after a change, of one manner. [s]"""
    one = race_against(house, catalogue, trial.alarm, way=way, goal=trial.goal)
    return hand_estimate(one, catalogue)


def locks_and_lights(site: Site, catalogue: Catalogue, way: WayIn) -> tuple[Mend, ...]:
    """A better lock or pane, and a light, for an opening to the outside that does not hold long."""
    if way.holds.value >= WEAK_LOCK_S or not leads_outside(site, way.opening):
        return ()
    better = catalogue.figure(BETTER_LOCK)
    brings = Estimate(
        value=better.value - way.holds.value,
        low=better.low - way.holds.high,
        high=better.high - way.holds.low,
        unit="s",
        basis=way.holds_basis,
    )
    what = "glazing" if way.manner == "through the glass" else "lock"
    return (
        Mend(action="change-lock", subject=way.opening.id, values=(("what", what),), gain=brings),
        Mend(action="add-light", subject=way.opening.id),
    )
