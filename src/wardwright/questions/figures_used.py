"""Which uncertain figures the answers to a question stand on, so that a paper lists those and no others."""

from __future__ import annotations

from collections.abc import Iterable

from wardwright.costing.return_visits import LENGTH, SETTLING
from wardwright.costing.tasks import tasks_of
from wardwright.model.catalogue import Catalogue
from wardwright.model.placement import is_way_in
from wardwright.model.site import Site
from wardwright.questions import (
    battery_ends,
    entry_and_exit_times,
    fire_and_water_distances,
    night_trips,
    one_thing_lost,
    pets_in,
    race_from_opening,
    reach_from_outside,
    undetected_walk,
    what_changed,
    what_is_heard,
    what_it_costs,
    what_it_sees,
    what_it_shows,
    when_disturbed,
    where_the_unit_goes,
    will_it_reach,
    zone_behaviours,
)
from wardwright.questions.mends import BETTER_LOCK
from wardwright.questions.return_risks import return_risks

CLIMB = frozenset({"climb-from-ground", "climb-from-thing", "climb-across", "climb-heave", "climb-pace"})
"""Which openings are reached from outside, and how soon."""
WAYS_IN = CLIMB - {"climb-heave", "climb-pace"}
"""Which openings count as ways in."""
ON_FOOT = frozenset({"pace-hurried", "stairs-share", "pass-door"})
"""What every route through a house is chosen by."""
NOT_LOCKED, UNRATED = "force-none", "force-plain"
"""How long a leaf holds that is not locked, and one whose lock has no row."""
RACE = ON_FOOT | WAYS_IN | {
    "climb-in", "break-control-unit", "radio-delay", "sounder-start", "message-time", "detector-reach",
    "walked-to-notice", "stay",
}  # fmt: skip
"""What a race is drawn from."""
HOUSEHOLD = frozenset(
    {
        "pace-slow", "pace-normal", "pace-quick", "load-share", "stairs-share", "pass-door", "unlock-door",
        "shut-door", "put-down", "code-entry",
    }
)  # fmt: skip
"""What the household's ways in and out take."""
CELLS = frozenset(
    {
        "usable-share", "current-share", "temperature-inside", "temperature-unheated", "temperature-outside",
        "sends-a-message", "activations-a-day", "activations-in-a-used-room", "outings-a-day",
        "walks-at-home-a-day", "doors-a-day", "pace-normal", "stairs-share", "pass-door",
    }
)  # fmt: skip
"""What the lives of cells are drawn from, and the household's walks past them chosen by."""
RADIO = frozenset(
    {
        "radio-offset", "radio-shadowing", "radio-spot", "radio-reading", "radio-noise-below-1-ghz",
        "radio-noise-above-1-ghz",
    }
)  # fmt: skip
"""What a radio link is drawn from, beside what walls take."""
SOUND = frozenset(
    {
        "sound-field-loss", "sound-door-gap", "sound-furnishing", "sound-baffle", "sound-model-room",
        "sound-model-one", "sound-model-more", "woke-child-high", "woke-child-low", "woke-hard-of-hearing-high",
        "woke-hard-of-hearing-low",
    }
)  # fmt: skip
"""What levels and their ranges stand on, and what trials of waking found."""
OF_ANY_JOB = ("work-", "job-", "allow-", "rate-", "upkeep-")
"""How the figures begin that any job may stand on."""
BY_QUESTION: dict[int, frozenset[str]] = {
    race_from_opening.NUMBER: RACE | {BETTER_LOCK},
    entry_and_exit_times.NUMBER: RACE | HOUSEHOLD | {"keyfob-press"},
    night_trips.NUMBER: RACE | HOUSEHOLD | {"keyfob-press"},
    zone_behaviours.NUMBER: HOUSEHOLD,
    undetected_walk.NUMBER: ON_FOOT | WAYS_IN | {"pace-cautious"},
    where_the_unit_goes.NUMBER: RADIO | ON_FOOT | WAYS_IN | {"climb-in"},
    will_it_reach.NUMBER: RADIO,
    when_disturbed.NUMBER: frozenset({"headlamp"}),
    what_it_sees.NUMBER: ON_FOOT | WAYS_IN | {"detector-reach"},
    one_thing_lost.NUMBER: RACE | RADIO | {"alarm-sounding"},
    battery_ends.NUMBER: CELLS | RADIO,
    what_is_heard.NUMBER: SOUND,
    what_it_costs.NUMBER: CELLS | RADIO | RACE | HOUSEHOLD | {"headlamp", "keyfob-press"},
    reach_from_outside.NUMBER: CLIMB | {BETTER_LOCK},
    pets_in.NUMBER: frozenset({"detector-reach"}),
    fire_and_water_distances.NUMBER: frozenset(),
    what_it_shows.NUMBER: frozenset({"density-left"}),
    what_changed.NUMBER: frozenset(),
}  # fmt: skip
"""A question that is not named here may stand on any figure."""


def figures_used(site: Site, catalogue: Catalogue, *, numbers: Iterable[int]) -> frozenset[str]:
    """Ids of the figures that the answers to some questions stand on.

    Parameters
    ----------
    site : Site
        Its locks and panes count, those of other houses do not.
    catalogue : Catalogue
        All figures.
    numbers : iterable of int
        Numbers of the questions that were asked.

    Returns
    -------
    frozenset of str
        Empty where nothing was asked.
    """
    every = frozenset(row.id for row in catalogue.figures)
    asked = frozenset(numbers)
    if not asked:
        return frozenset()
    found = frozenset().union(*(BY_QUESTION.get(number, every) for number in asked))
    if what_it_costs.NUMBER in asked:
        found |= _work(site, catalogue)
    return every & (found | _holding(site, catalogue))


def _work(site: Site, catalogue: Catalogue) -> frozenset[str]:
    """The figures of a job's own tasks, of what each could be done by instead, and of what it is charged at."""
    tasks = {figure for task in tasks_of(site, catalogue) for figure in task.figures}
    risks = {risk.figure for risk in return_risks(site, catalogue)} | {SETTLING, LENGTH}
    others = (row.id for row in catalogue.figures if row.id.startswith(OF_ANY_JOB))
    return frozenset(tasks | risks).union(others)


def _holding(site: Site, catalogue: Catalogue) -> frozenset[str]:
    """The figures of what holds somebody up at the openings that lead in."""
    locks = {row.id: row.force_figure for row in catalogue.locks}
    panes = {row.id: row.break_figure for row in catalogue.glazings}
    found: set[str] = set()
    for opening in site.openings:
        if is_way_in(site, opening):
            is_held = opening.is_locked and opening.habit == "shut" and opening.kind != "gap"
            found.add(locks.get(opening.lock, UNRATED) if is_held else NOT_LOCKED)
            found.update(panes[pane] for pane in (opening.glazing,) if pane in panes)
    return frozenset(found)
