"""LNK104: heard too weakly."""

from __future__ import annotations

from common.houses import CATALOGUE, one_room, standing_free
from common.rule_houses.links import STRONG, UNIT, WEAK
from wardwright.rules.links.radio_margin_under_its_limit import radio_margin_under_its_limit as rule
from wardwright.rules.registry import findings_of


def test_the_weak_one_is_named_with_margin_limit_and_a_stronger_one() -> None:
    (found,) = findings_of(rule, one_room(devices=(UNIT, WEAK, STRONG)), CATALOGUE)
    assert found.subject == "weak"
    assert found.message == "weak: it is likely to be heard too weakly by unit"
    assert found.severity == "advise"
    assert found.limit == 10.0
    assert found.estimate is not None
    assert found.estimate.low < found.estimate.value < 10.0
    assert [(mend.action, mend.values) for mend in found.mends] == [
        ("replace-device", (("sheet", "radio-strong"),))
    ]
    assert {sketch.role for sketch in found.sketches} == {"radio-path"}
    assert found.related == ("unit",)


def test_a_silent_sheet_is_not_run_and_not_passed() -> None:
    silent = standing_free("silent", "water", 4.5, 2.0)
    (found,) = findings_of(rule, one_room(devices=(UNIT, silent)), CATALOGUE)
    assert found.severity == "not run"
    assert "does not say in which band it sends" in found.message
