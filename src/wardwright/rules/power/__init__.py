"""Rules about cells and stand-by batteries: codes PWR."""

from __future__ import annotations

from wardwright.rules.power.battery_ends_before_the_next_service import battery_ends_before_the_next_service
from wardwright.rules.power.charger_slower_than_the_grade_asks import charger_slower_than_the_grade_asks
from wardwright.rules.power.standby_shorter_than_the_grade_asks import standby_shorter_than_the_grade_asks
from wardwright.rules.registry import Rule

POWER_RULES: tuple[Rule, ...] = (
    battery_ends_before_the_next_service,
    standby_shorter_than_the_grade_asks,
    charger_slower_than_the_grade_asks,
)
"""In code order."""
