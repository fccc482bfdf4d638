"""PRG105: the smallest of the standard's and the country's limits."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE
from common.rule_houses.programme import timed
from wardwright.model.place import Place
from wardwright.rules.programme.sounding_time_outside_its_range import sounding_time_outside_its_range as rule
from wardwright.rules.registry import findings_of


@pytest.mark.parametrize(
    ("country", "time_s", "limit", "severity"),
    [
        ("GB", 901.0, 900.0, "check with the standard"),  # the European 900 s, not the British 1200 s
        ("GB", 60.0, 90.0, "check with the standard"),
        ("BE", 200.0, 180.0, "advise"),
        ("DE", 200.0, 180.0, "check with the standard"),
        ("FR", 900.0, None, ""),
    ],
)
def test_the_smallest_limit_wins(country: str, time_s: float, limit: float | None, severity: str) -> None:
    found = findings_of(rule, timed(Place(country=country), sounding_time_s=time_s), CATALOGUE)
    assert [(one.limit, one.severity) for one in found] == ([] if limit is None else [(limit, severity)])


def test_a_country_may_have_a_limit_where_the_pack_has_none() -> None:
    (found,) = findings_of(rule, timed(Place(rule_pack="us", country="AU"), sounding_time_s=600.0), CATALOGUE)
    assert found.limit == 300.0


def test_an_unknown_country_is_said_beside_the_standards_limit() -> None:
    found = findings_of(rule, timed(Place(), sounding_time_s=1000.0), CATALOGUE)
    assert {(one.subject, one.severity) for one in found} == {
        ("one room", "not run"),
        ("programme", "check with the standard"),
    }
