"""KEY102: the sheet, the household, the published heights."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, person, two_rooms_and_hall
from wardwright.model.place import Place
from wardwright.rules.finding import Finding
from wardwright.rules.keypads.keypad_out_of_reach import keypad_out_of_reach as rule
from wardwright.rules.registry import findings_of

SLOW = (person("Grandmother", pace="slow"),)


def findings(height_m: float, sheet: str = "keypad", **parts: Any) -> tuple[Finding, ...]:
    keypad = on_wall("keypad", sheet, "kitchen-wall", 1.0, side="right", height_m=height_m)
    return findings_of(rule, two_rooms_and_hall(devices=(keypad,), **parts), CATALOGUE)


@pytest.mark.parametrize(
    ("height_m", "sheet", "people", "severity", "words", "best"),
    [
        (1.6, "keypad-with-heights", (), "must mend", "higher than its sheet says", 1.2),
        (0.8, "keypad-with-heights", (), "must mend", "lower than its sheet says", 0.9),
        (1.3, "keypad", SLOW, "advise", "higher than Grandmother reaches with ease", 1.2),
        (0.6, "keypad", SLOW, "advise", "lower than Grandmother reaches with ease", 0.7),
        (1.3, "keypad", (), "check with the standard", "higher than public guidance says", 1.2),
        (0.4, "keypad", (), "check with the standard", "lower than public guidance says", 0.45),
    ],
)
def test_the_gravest_is_told_with_the_height_that_suits_all(
    height_m: float, sheet: str, people: Any, severity: str, words: str, best: float
) -> None:
    (found,) = findings(height_m, sheet, people=people)
    assert found.severity == severity
    assert found.message == f"keypad: it is {words}"
    assert found.estimate is not None
    assert found.estimate.value == height_m
    assert found.limit == pytest.approx(best)
    assert found.mends[0].values == (("height_m", pytest.approx(best)),)


@pytest.mark.parametrize(("height_m", "count"), [(1.21, 0), (1.23, 1), (0.39, 0), (0.37, 1)])
def test_the_american_figures_hold_in_their_own_rules(height_m: float, count: int) -> None:
    assert len(findings(height_m, place=Place(rule_pack="us"))) == count


def test_a_height_inside_all_is_silent() -> None:
    assert findings(1.1, "keypad-with-heights", people=SLOW) == ()
