"""PRG102: 45 to 255 s in America; no figure in Europe."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE
from common.rule_houses.programme import BRITISH, timed
from wardwright.rules.programme.exit_time_outside_its_range import exit_time_outside_its_range as rule
from wardwright.rules.registry import findings_of


@pytest.mark.parametrize(("time_s", "limit"), [(44.0, 45.0), (255.0, None), (256.0, 255.0)])
def test_the_american_range(time_s: float, limit: float | None) -> None:
    found = findings_of(rule, timed(exit_time_s=time_s), CATALOGUE)
    assert [one.limit for one in found] == ([] if limit is None else [limit])


def test_europe_has_no_figure_and_says_so() -> None:
    (found,) = findings_of(rule, timed(BRITISH, exit_time_s=5.0), CATALOGUE)
    assert found.severity == "not run"
    assert "no figure" in found.message
