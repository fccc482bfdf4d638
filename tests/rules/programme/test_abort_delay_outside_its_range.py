"""PRG109: 15 to 45 s in America, or none at all."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE
from common.rule_houses.programme import timed
from wardwright.rules.programme.abort_delay_outside_its_range import abort_delay_outside_its_range as rule
from wardwright.rules.registry import findings_of


@pytest.mark.parametrize(
    ("time_s", "limit"), [(0.0, None), (14.0, 15.0), (15.0, None), (45.0, None), (46.0, 45.0)]
)
def test_the_american_range(time_s: float, limit: float | None) -> None:
    found = findings_of(rule, timed(abort_delay_s=time_s), CATALOGUE)
    assert [one.limit for one in found] == ([] if limit is None else [limit])
