"""What would mend a way in: locks first, then the alarm, each with what it would bring."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.questions.changes_tried import Trial, changes_for
from wardwright.questions.time_in_hand import least_hand, likely_hand
from wardwright.rules.finding import Mend
from wardwright.trials.alarm import Heard, alarm_of
from wardwright.trials.draws import estimate_of
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
    tried = []
    goal, heard = spot_of(site, control_units(site, catalogue)[0]), alarm_of(site, catalogue).heard
    silent = _silent_on(site.bare, catalogue, ways, heard=heard, goal=goal)
    for action, subject, values, change in changes_for(site, catalogue, worst.way, now=now):
        # Devices that nobody passes may be moved without a change being tried again.
        trial = change.without(silent) if change.goal == goal else change
        after = _worst_after(site.bare, catalogue, tuple(ways), trial=trial, at_least=now.value + WORTH_S)
        if after is not None and after.value - now.value >= WORTH_S:
            tried.append(Mend(action=action, subject=subject, values=values, gain=after))
    tried.sort(key=lambda mend: (-(mend.gain.value if mend.gain else 0.0), mend.action, mend.subject))
    best = {(mend.action, mend.subject): mend for mend in reversed(tried)}
    kept = (mend for mend in tried if best[mend.action, mend.subject] is mend)
    return (*locks_and_lights(site, catalogue, worst.way), *kept)


def _silent_on(
    house: Site, catalogue: Catalogue, ways: Sequence[WayIn], *, heard: Heard, goal: Spot
) -> frozenset[str]:
    """Ids of the devices that notice on none of some ways."""
    return frozenset(
        device.id
        for device, _ in heard
        if all(notices_on(house, catalogue, device, way=way, goal=goal) is None for way in ways)
    )


@lru_cache(maxsize=512)
def _worst_after(
    house: Site, catalogue: Catalogue, ways: tuple[WayIn, ...], *, trial: Trial, at_least: float
) -> Estimate | None:
    """The time in hand of the worst manner after a change; None where it cannot be worked out or is too little."""
    alarm, goal = trial
    hands = []
    try:
        for way in ways:
            likely = likely_race(house, catalogue, alarm, way=way, goal=goal)
            hands.append((likely_hand(likely, catalogue), way.manner, way))
            # A hair for rounding: what is worth naming is judged by the race run whole.
            if hands[-1][0] < at_least - HAIR_S:
                return None
    except NotComputable:
        return None
    # The manner that is worst in the likely case decides: only that race is run whole.
    *_, worst = min(hands, key=lambda hand: hand[:2])
    one = race_against(house, catalogue, alarm, way=worst, goal=goal)
    return estimate_of(least_hand(one, catalogue), one.cases, unit="s")


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
