from __future__ import annotations

from typing import get_args

from wardwright.works.site_result import OUTCOMES, Outcome, Step


def test_every_step_says_what_may_be_written_down_and_nothing_is_passed_by_being_fitted() -> None:
    assert set(OUTCOMES) == set(get_args(Step))
    assert {one for some in OUTCOMES.values() for one in some} == set(get_args(Outcome))
    assert all("not done" in some for some in OUTCOMES.values())
    assert "passed" not in OUTCOMES["fit"]
