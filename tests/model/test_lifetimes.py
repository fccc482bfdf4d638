from __future__ import annotations

from datetime import date

import pytest

from wardwright.model.device import Device, FreeMount
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.lifetimes import end_of_life


def ended(made: date | None, years: float | None) -> date | None:
    sheet = DeviceSheet(id="s", name="s", source="own", mark="assumption", kind="co-alarm", life_years=years)
    device = Device(id="a", name="A", sheet="s", mount=FreeMount(storey="g", at_m=(0, 0)), made_on=made)
    return end_of_life(device, sheet)


@pytest.mark.parametrize(
    ("made", "years", "end"),
    [
        (date(2026, 11, 26), 7, date(2033, 11, 26)),
        (date(2025, 8, 31), 2.5, date(2028, 2, 29)),
        (date(2026, 12, 1), 1, date(2027, 12, 1)),
    ],
)
def test_a_life_is_counted_from_the_making(made: date, years: float, end: date) -> None:
    assert ended(made, years) == end


def test_what_is_not_known_stays_not_known() -> None:
    assert ended(None, 10) is None
    assert ended(date(2026, 1, 1), None) is None
