"""A finding is a frozen record, compared by value."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from common.houses import CATALOGUE
from common.rule_houses import HOUSES
from wardwright.rules.finding import Finding
from wardwright.rules.table import check


def some() -> tuple[Finding, ...]:
    return check(HOUSES["MOV103"].fires, CATALOGUE)


def test_two_runs_give_equal_findings() -> None:
    assert some() == some()
    assert set(some()) == set(some())


def test_a_finding_cannot_be_changed() -> None:
    with pytest.raises(ValidationError, match="frozen"):
        some()[0].message = "nothing"


def test_it_goes_through_json_unchanged() -> None:
    for one in some():
        assert Finding.model_validate_json(one.model_dump_json()) == one


def test_a_severity_of_ones_own_is_refused() -> None:
    with pytest.raises(ValidationError, match="severity"):
        Finding(code="MOV103", rule="x", severity="fails", subject="a", message="m", cure="c")  # type: ignore[arg-type] # the fault under test
