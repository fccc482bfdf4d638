"""A firm's own data."""

from __future__ import annotations

import pytest
from pydantic import ValidationError

from wardwright.costing.firm import Firm

BARE = {"name": "Example Alarms", "rates": {"currency": "GBP", "labour_per_hour": "48.00"}}


def test_a_name_and_a_rate_are_enough() -> None:
    firm = Firm.model_validate(BARE)
    assert firm.tax is None
    assert firm.rates.travel_min is None


@pytest.mark.parametrize(
    ("key", "value"),
    [("labour_per_hour", "-1"), ("labour_per_hour", "1.005"), ("currency", "pounds"), ("password", "x")],
)
def test_rates_that_cannot_be_are_refused(key: str, value: str) -> None:
    with pytest.raises(ValidationError):
        Firm.model_validate({**BARE, "rates": {**BARE["rates"], key: value}})  # type: ignore[dict-item]
