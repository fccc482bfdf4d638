"""Homes drawn by seed: every question is answered, the slow walker agrees, and no intruder beats a design that holds.

`test` draws 20 of them, `prove` 500.
"""

from __future__ import annotations

import os

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
    _walked(site)
    household = SlowHousehold(site, CATALOGUE)
    assert not [
        words for person in site.people[: None if IS_PROVING else 1] for words in household.apart(person)
    ]
    found = campaign(site, CATALOGUE, trials=TRIALS, seed=number)
    assert [one.bugs for one in traced(found, CATALOGUE)] == [(), ()]


def _walked(site: Site) -> None:
    """Every way in to the control unit, by the trials and by the walkers."""
    goal = spot_of(site, control_units(site, CATALOGUE)[0])
    slow = SlowHouse(site, CATALOGUE)
    found = [slow.compared(way, goal) for way in ways_in(site, CATALOGUE)[0]]
    assert not [words for one in found for words in one.apart]
    signals = sum(one.signals for one in found)
    assert sum(one.close for one in found) >= CLOSE_SHARE * signals - 4
