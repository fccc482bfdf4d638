from __future__ import annotations

import pytest

from wardwright.documents.content.shares_told import NO_TRIAL, hundredths, percent
from wardwright.trials.campaign.shares import share_of


@pytest.mark.parametrize(
    ("share", "says"),
    [(0.0, "0.0"), (0.0001, "under 0.1"), (0.5, "50.0"), (0.99999, "over 99.9"), (1.0, "100.0")],
)
def test_a_few_of_very_many_are_never_none_nor_all(share: float, says: str) -> None:
    assert hundredths(share) == says


def test_a_share_is_told_with_its_interval() -> None:
    assert percent(share_of(50, 100)) == "50.0 % (39.8 to 60.2)"
    assert percent(share_of(0, 0)) == NO_TRIAL
