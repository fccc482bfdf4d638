"""What the night part still protects."""

from __future__ import annotations

import pytest

from common.night_house import night_house
from wardwright.errors import NotComputable
from wardwright.questions.still_protected import openings_noticed, still_protected, watched_at_night
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.race import race
from wardwright.trials.watchers import control_units
from wardwright.trials.ways_on_foot import spot_of

CATALOGUE = load_catalogue()
SITE = night_house({"front-contact": "entry-exit"})


def test_each_opening_is_raced_against_the_night_part_alone() -> None:
    each = {one.opening.id: one for one in watched_at_night(SITE, CATALOGUE)}
    assert each["front-door"].is_surely_noticed
    assert not each["kitchen-window"].is_noticed
    goal = spot_of(SITE, control_units(SITE, CATALOGUE)[0])
    found = each["front-door"].race
    assert found is not None
    again = race(SITE, CATALOGUE, way=found.way, goal=goal, part="night")
    assert found.first_notice.tolist() == again.first_notice.tolist()


def test_the_number_counts_openings_and_the_rest_is_named() -> None:
    answer = still_protected(SITE, CATALOGUE, number=8, notes=("a note",))
    assert answer.estimate is not None
    assert (answer.estimate.value, answer.verdict) == (1.0, "thin")
    assert answer.notes == ("nothing in the night part notices: kitchen window, study window", "a note")
    by_name = {part.name: part for part in answer.parts}
    assert by_name["kitchen window"].reason == "nothing in the night part notices"
    noticed = by_name["front door, noticed by front contact after"].estimate
    assert noticed is not None
    assert (noticed.value, noticed.high) == (0.0, 0.0)


def test_nothing_in_the_part_protects_nothing() -> None:
    answer = still_protected(night_house({}), CATALOGUE, number=8, notes=())
    assert answer.verdict == "bad"
    assert openings_noticed(watched_at_night(night_house({}), CATALOGUE)).value == 0.0


def test_more_in_the_part_never_protects_less() -> None:
    more = night_house({"front-contact": "entry-exit", "hall-movement": "instant"})
    counts = [openings_noticed(watched_at_night(one, CATALOGUE)).value for one in (SITE, more)]
    assert counts == sorted(counts)


def test_without_a_control_unit_it_is_not_computable() -> None:
    site = night_house(devices=tuple(one for one in SITE.devices if one.id != "unit"))
    with pytest.raises(NotComputable, match="no control unit"):
        watched_at_night(site, CATALOGUE)
    answer = still_protected(site, CATALOGUE, number=8, notes=("a note",))
    assert (answer.reason, answer.notes) == ("not computable: no control unit", ("a note",))
