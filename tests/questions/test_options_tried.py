"""Options from mends: each changes something, none lets an opening be noticed later."""

from __future__ import annotations

from itertools import pairwise

import pytest

from common.houses import one_room
from wardwright.questions.options_tried import ALL_STEPS, AS_IT_STANDS, NEXT_STEP, RANKS, options_tried
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample, sample_names

CATALOGUE = load_catalogue()


@pytest.mark.parametrize("name", sample_names())
def test_each_option_changes_more_than_the_one_before(name: str) -> None:
    site = read_sample(name)
    found = options_tried(site, CATALOGUE, ask(site, CATALOGUE))
    assert [one.name for one in found] == [AS_IT_STANDS, NEXT_STEP, ALL_STEPS][: len(found)] or len(
        found
    ) == 2
    assert found[0].site is site
    for before, after in pairwise(found):
        assert len(after.mends) > len(before.mends)
        assert len(after.site.devices) >= len(before.site.devices)
        assert after.changes
        for change in after.changes:
            if change.what == "opening":
                assert RANKS[change.after] > RANKS[change.before]  # type: ignore[index]


def test_the_terrace_is_noticed_sooner_at_its_back() -> None:
    site = read_sample("terrace")
    found = options_tried(site, CATALOGUE, ask(site, CATALOGUE, [1]))
    (change, *_) = found[1].changes
    assert (change.name, change.before, change.after) == ("Kitchen window", "further in", "at once")


def test_without_answers_there_is_the_design_alone() -> None:
    assert [one.name for one in options_tried(one_room(), CATALOGUE, ())] == [AS_IT_STANDS]


def test_no_place_of_what_keeps_the_alarm_going_is_told() -> None:
    for name in sample_names():
        site = read_sample(name)
        for one in options_tried(site, CATALOGUE, ask(site, CATALOGUE)):
            told = [
                change for change in one.changes if change.name in ("transmitter", "control unit", "router")
            ]
            assert all(change.subject == "" for change in told)
