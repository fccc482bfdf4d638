"""FIR110: the sheet's own range first, then public guidance."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, one_room
from common.rule_houses.fire import LOFT, hung
from wardwright.model.place import Place
from wardwright.rules.fire.alarm_colder_or_warmer_than_its_sheet import (
    alarm_colder_or_warmer_than_its_sheet as rule,
)
from wardwright.rules.registry import findings_of


@pytest.mark.parametrize(
    ("sheet", "place", "value", "limit", "severity"),
    [
        ("smoke-tender", Place(), 28.0, 25.0, "must mend"),
        ("smoke-tender", Place(usual_room_c=4.0, warm_room_c=20.0), 4.0, 5.0, "must mend"),
        ("smoke", Place(rule_pack="us", warm_room_c=39.0), 39.0, 37.8, "advise"),
        ("smoke", Place(rule_pack="us", usual_room_c=3.0), 3.0, 4.4, "advise"),
    ],
)
def test_the_graver_limit_goes_first(
    sheet: str, place: Place, value: float, limit: float, severity: str
) -> None:
    (found,) = findings_of(rule, one_room(devices=(hung("alarm", sheet, 2.5, 2.0),), place=place), CATALOGUE)
    assert found.estimate is not None
    assert (found.estimate.value, found.limit, found.severity) == (value, limit, severity)


def test_the_mend_is_a_sheet_for_that_range() -> None:
    (found,) = findings_of(rule, one_room(devices=(hung("alarm", "smoke-tender", 2.5, 2.0),)), CATALOGUE)
    assert found.mends[0].values == (("sheet", "smoke"),)


def test_a_loft_is_not_run() -> None:
    (found,) = findings_of(
        rule, one_room(devices=(hung("alarm", "smoke", 2.5, 2.0),), spaces=LOFT), CATALOGUE
    )
    assert found.severity == "not run"
