"""The plan of fitting."""

from __future__ import annotations

import pytest

from common.houses import one_room
from common.priced_room import priced_room
from wardwright.errors import NotComputable
from wardwright.questions.fit_plan import FitPlan, fit_plan
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


def test_each_device_has_its_sheet_and_was_tried() -> None:
    plan = fit_plan(priced_room(), CATALOGUE)
    assert [one.device for one in plan.sheets] == [one.device for one in plan.moves] == ["unit", "hall"]
    assert FitPlan.model_validate_json(plan.model_dump_json()) == plan


def test_the_quick_plan_leaves_out_what_takes_time() -> None:
    assert fit_plan(priced_room(), CATALOGUE, is_quick=True).moves == ()


def test_nothing_to_fit_has_no_plan() -> None:
    with pytest.raises(NotComputable, match="nothing is to be fitted"):
        fit_plan(one_room(), CATALOGUE)
