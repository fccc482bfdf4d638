"""What a campaign says, counted again from its columns."""

from __future__ import annotations

import numpy as np
import pytest

from common.houses import CATALOGUE
from common.small_campaign import fitted_hall, watched_hall
from wardwright.trials.campaign.report import report_of
from wardwright.trials.campaign.results import CANNOT_KNOW, CampaignReport
from wardwright.trials.campaign.run import campaign

FOUND = campaign(watched_hall(), CATALOGUE, trials=6000, seed=2)
REPORT = report_of(FOUND, CATALOGUE)


def test_shares_are_those_of_the_columns() -> None:
    assert REPORT.before_target.count == np.count_nonzero(FOUND.columns.sounder < FOUND.columns.touched)
    assert REPORT.before_unit is not None
    assert REPORT.before_unit.count == np.count_nonzero(np.isfinite(FOUND.columns.message))
    assert REPORT.both.count <= min(REPORT.before_target.count, REPORT.before_unit.count)
    assert [name for name, _ in REPORT.targets] == ["silver", "tools"]
    for share in (REPORT.before_target, REPORT.before_unit, REPORT.both):
        assert share.low < share.count / share.trials < share.high


def test_ways_add_up() -> None:
    assert sum(one.share.count for one in REPORT.ways) == 6000
    assert sum(one.sounder.count for one in REPORT.ways) == REPORT.before_target.count
    assert REPORT.before_unit is not None
    assert sum(one.message.count for one in REPORT.ways) == REPORT.before_unit.count


def test_beaten_paths_are_worst_first_and_told_by_rooms() -> None:
    lost = [one.lost.count for one in REPORT.beaten]
    assert lost == sorted(lost, reverse=True)
    assert lost
    study = next(one for one in REPORT.beaten if one.way == "study window")
    assert study.rooms[0] == "Study"
    assert all(one.own.count == one.lost.count for one in REPORT.beaten)


def test_paths_are_worst_first() -> None:
    chances = [one.interrupted for one in REPORT.paths]
    assert chances == sorted(chances)
    assert len(REPORT.paths) == 2 * len(FOUND.setting.ways)


def test_losses_are_differences_of_the_same_intruders() -> None:
    assert {one.lost for one in REPORT.losses} == {"bell", *(one.id for one in FOUND.setting.devices)}
    for one in REPORT.losses:
        assert one.message_change == pytest.approx((one.message.value or 0.0) - FOUND.message_in_time.mean())


def test_without_a_limit_a_second_detection_is_not_judged() -> None:
    """This small catalogue's limits are the package's, but for its own windows here."""
    without = CATALOGUE.model_copy(
        update={"limits": tuple(one for one in CATALOGUE.limits if one.id != "confirmation-window")}
    )
    found = report_of(campaign(watched_hall(), without, trials=100), without)
    assert found.second is None
    assert found.second_reason is not None
    assert found.second_reason.startswith("not computable")
    assert REPORT.second is not None
    assert REPORT.second_window_s == 1800.0


def test_without_targets() -> None:
    found = report_of(campaign(fitted_hall(), CATALOGUE, trials=300), CATALOGUE)
    assert found.targets == ()
    assert found.before_target.count == 0
    assert next(one for one in found.times if one.name == "first target touched").middle_s is None


def test_what_it_cannot_know_is_said_with_it() -> None:
    assert REPORT.cannot_know == CANNOT_KNOW
    again = CampaignReport.model_validate_json(REPORT.model_dump_json())
    assert again == REPORT
