"""Rules about where the control unit is: codes CTL."""

from __future__ import annotations

from wardwright.rules.control.control_unit_far_from_power import control_unit_far_from_power
from wardwright.rules.control.control_unit_in_view_from_outside import control_unit_in_view_from_outside
from wardwright.rules.control.control_unit_not_central import control_unit_not_central
from wardwright.rules.control.control_unit_not_watched_by_an_instant_device import (
    control_unit_not_watched_by_an_instant_device,
)
from wardwright.rules.control.control_unit_on_entry_route import control_unit_on_entry_route
from wardwright.rules.control.router_not_protected import router_not_protected
from wardwright.rules.control.single_message_path import single_message_path
from wardwright.rules.registry import Rule

CONTROL_RULES: tuple[Rule, ...] = (
    control_unit_on_entry_route,
    control_unit_not_watched_by_an_instant_device,
    control_unit_not_central,
    control_unit_in_view_from_outside,
    router_not_protected,
    control_unit_far_from_power,
    single_message_path,
)
"""In code order."""
