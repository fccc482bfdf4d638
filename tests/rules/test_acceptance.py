"""Findings that are lived with: marked, never dropped."""

from __future__ import annotations

from common.houses import CATALOGUE, one_room
from common.rule_houses.movement import FACING_NORTH, NORTH_WINDOW
from wardwright.model.needs import Accepted, Needs
from wardwright.rules.acceptance import left_over, with_reasons
from wardwright.rules.finding import Finding
from wardwright.rules.table import check

HERE = Accepted(rule="MOV103", subject="living-movement", because="the blind is always down")
ALL = Accepted(rule="MOV103", because="the owner wants it so")
ELSEWHERE = Accepted(rule="MOV103", subject="hall-movement", because="long gone")


def found(*accepted: Accepted) -> tuple[Finding, ...]:
    site = one_room(devices=(FACING_NORTH,), openings=(NORTH_WINDOW,), needs=Needs(accepted=accepted))
    return check(site, CATALOGUE)


def test_an_accepted_finding_is_still_there_with_its_reason() -> None:
    before, after = found(), found(HERE)
    assert [one.code for one in after] == [one.code for one in before]
    assert {one.code: one.accepted for one in after if one.accepted} == {"MOV103": "the blind is always down"}


def test_the_reason_for_this_thing_goes_before_that_for_all() -> None:
    assert {one.accepted for one in found(ALL, HERE) if one.code == "MOV103"} == {HERE.because}
    assert {one.accepted for one in found(ALL) if one.code == "MOV103"} == {ALL.because}


def test_another_thing_or_rule_is_left_as_it_is() -> None:
    assert with_reasons(found(), (ELSEWHERE,)) == found()


def test_what_nothing_answers_to_is_named() -> None:
    site = one_room(needs=Needs(accepted=(ELSEWHERE, HERE)))
    assert left_over(site, found()) == (ELSEWHERE,)
