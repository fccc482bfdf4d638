from __future__ import annotations

import pytest

from wardwright.documents.content.shares_told import NO_TRIAL, hundredths, percent, percent_alone
from wardwright.trials.campaign.shares import share_of


@pytest.mark.parametrize(
    ("share", "says"),
    [(0.0, "0.0"), (0.0001, "under 0.1"), (0.5, "50.0"), (0.99999, "over 99.9"), (1.0, "100.0")],
)
def test_a_few_of_very_many_are_never_none_nor_all(share: float, says: str) -> None:
    assert hundredths(share) == says


@pytest.mark.parametrize(
    ("count", "trials", "words"),
    [
        (0, 0, "no trial"),
        (1, 100_000, "under 0.1 % (under 0.1 to under 0.1)"),
        (99_999, 100_000, "over 99.9 % (over 99.9 to over 99.9)"),
        (50, 100, "50.0 % (39.8 to 60.2)"),
    ],
)
def test_a_share_is_told_with_its_interval(count: int, trials: int, words: str) -> None:
    assert percent(share_of(count, trials)) == words


def test_no_trial_is_no_share() -> None:
    assert percent(share_of(0, 0)) == NO_TRIAL


def test_a_share_alone_has_no_interval() -> None:
    assert percent_alone(share_of(50, 100)) == "50.0 %"
    assert percent_alone(share_of(0, 0)) == NO_TRIAL
