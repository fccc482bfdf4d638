"""Homes drawn by seed: every question is answered, the slow walker agrees, and no intruder beats a design that holds.

`test` draws 20 of them, `prove` 500.
"""

from __future__ import annotations

import os
import re
from pathlib import Path

import pytest

from common.random_houses import random_house
from common.slow_household import SlowHousehold
from common.slow_race import SlowHouse
from wardwright.model.site import Site
from wardwright.questions.table import QUESTIONS, ask
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.campaign.misses import traced
from wardwright.trials.campaign.run import campaign
from wardwright.trials.watchers import control_units
from wardwright.trials.ways_in import ways_in
from wardwright.trials.ways_on_foot import spot_of

CATALOGUE = load_catalogue()
IS_PROVING = os.environ.get("WARDWRIGHT_PROVE") == "1"
HOUSES = 500 if IS_PROVING else 20
TRIALS = 1500
CLOSE_SHARE = 0.9
"""Of the signals of all ways into a home at least this many are within three steps of the middling walker; a home has
few, so that one or two that hang on a hair must not matter. The others lie between the walkers. [-]"""


@pytest.mark.parametrize("number", range(HOUSES))
def test_a_home(number: int) -> None:
    """One test a home, since all of it hangs on what is worked out once."""
    site = random_house(number, CATALOGUE)
    answers = ask(site, CATALOGUE)
    assert {one.question for one in answers} == {one.number for one in QUESTIONS}
    assert check(site, CATALOGUE)
    _walked(site, "night" if number % 4 == 3 else "full")
    household = SlowHousehold(site, CATALOGUE)
    assert not [
        words for person in site.people[: None if IS_PROVING else 1] for words in household.apart(person)
    ]
    found = campaign(site, CATALOGUE, trials=TRIALS, seed=number)
    assert (found.columns.broken >= found.columns.unit).all()
    assert [one.bugs for one in traced(found, CATALOGUE)] == [(), ()]


def _walked(site: Site, part: str) -> None:
    """Every way in to the control unit, by the trials and by the walkers."""
    goal = spot_of(site, control_units(site, CATALOGUE)[0])
    slow = SlowHouse(site, CATALOGUE, part=part)
    found = [slow.compared(way, goal) for way in ways_in(site, CATALOGUE)[0]]
    assert not [words for one in found for words in one.apart]
    signals = sum(one.signals for one in found)
    assert sum(one.close for one in found) >= CLOSE_SHARE * signals - 4


def test_homes_differ_in_all_that_matters() -> None:
    """The generator draws every sort of thing, so that no part of the above is idle."""
    homes = [random_house(number, CATALOGUE) for number in range(40)]
    assert {len(one.storeys) for one in homes} == {1, 2, 3}
    kinds = {opening.kind for one in homes for opening in one.openings}
    assert kinds == {"door", "window", "gap"}
    for told in ("open_edges", "stairs", "fixtures", "pets", "people", "targets"):
        assert any(getattr(one, told) for one in homes), told
    assert {opening.habit for one in homes for opening in one.openings} == {"shut", "ajar", "open"}
    sheets = {device.sheet for one in homes for device in one.devices}
    assert {
        "movement-12m", "movement-12m-pet", "movement-8m-wired", "movement-ceiling-7m", "movement-curtain-9m",
        "shock-radio",
    } <= sheets  # fmt: skip
    behaviours = {zone.behaviour for one in homes for zone in one.zones}
    assert {"instant", "entry-exit", "entry-route", "always-on", "log-only"} <= behaviours
    assert {zone.parts for one in homes for zone in one.zones} == {("full",), ("full", "night")}
    assert any(one.ground.things for one in homes)
    assert {one.place.country for one in homes} == {"GB", "DE", "US"}
    assert any(sum(opening.is_entry_door for opening in one.openings) == 2 for one in homes)


def test_the_walkers_share_nothing_with_what_they_are_held_against() -> None:
    """They read the model alone: no engine, no rule, no trial, no library of numbers or shapes."""
    for name in ("slow_sight", "slow_walker"):
        text = (Path(__file__).resolve().parents[1] / "common" / f"{name}.py").read_text(encoding="utf-8")
        imported = re.findall(r"^(?:from|import) ([\w.]+)", text, re.MULTILINE)
        known = (
            "wardwright.model.",
            "common.slow_sight",
            "__future__",
            "collections.abc",
            "itertools",
            "math",
            "typing",
        )
        assert all(one.startswith(known) for one in imported), imported
