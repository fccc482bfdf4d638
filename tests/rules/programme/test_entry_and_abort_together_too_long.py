"""PRG103: 60 s together in America."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE
from common.mending import mended
from common.rule_houses.programme import timed
from wardwright.rules.programme.entry_and_abort_together_too_long import (
    entry_and_abort_together_too_long as rule,
)
from wardwright.rules.registry import findings_of


@pytest.mark.parametrize(
    ("entry_s", "abort_s", "mend"),
    [
        (40.0, 30.0, (40.0, 20.0)),  # the abort delay alone gives way
        (50.0, 30.0, (45.0, 15.0)),  # the abort delay down to its least, then the entry time
        (50.0, 12.0, (48.0, 12.0)),  # an abort delay under its least is left
    ],
)
def test_the_abort_delay_gives_way_first(entry_s: float, abort_s: float, mend: tuple[float, float]) -> None:
    site = timed(entry_time_s=entry_s, abort_delay_s=abort_s)
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert (found.estimate.value, found.limit) == (entry_s + abort_s, 60.0)
    assert found.mends[0].values == (("entry_time_s", mend[0]), ("abort_delay_s", mend[1]))
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


def test_without_an_abort_delay_nothing_adds_up() -> None:
    assert findings_of(rule, timed(entry_time_s=200.0, abort_delay_s=0.0), CATALOGUE) == ()
