"""Rules about the programme: codes PRG."""

from __future__ import annotations

from wardwright.rules.programme.abort_delay_on_an_instant_zone import abort_delay_on_an_instant_zone
from wardwright.rules.programme.abort_delay_outside_its_range import abort_delay_outside_its_range
from wardwright.rules.programme.entry_and_abort_together_too_long import entry_and_abort_together_too_long
from wardwright.rules.programme.entry_time_outside_its_range import entry_time_outside_its_range
from wardwright.rules.programme.exit_time_outside_its_range import exit_time_outside_its_range
from wardwright.rules.programme.more_users_or_zones_than_the_control_unit_has import (
    more_users_or_zones_than_the_control_unit_has,
)
from wardwright.rules.programme.response_that_fails_its_signal import response_that_fails_its_signal
from wardwright.rules.programme.several_doors_start_the_entry_time import several_doors_start_the_entry_time
from wardwright.rules.programme.sounding_time_outside_its_range import sounding_time_outside_its_range
from wardwright.rules.registry import Rule

PROGRAMME_RULES: tuple[Rule, ...] = (
    entry_time_outside_its_range,
    exit_time_outside_its_range,
    entry_and_abort_together_too_long,
    abort_delay_on_an_instant_zone,
    sounding_time_outside_its_range,
    response_that_fails_its_signal,
    several_doors_start_the_entry_time,
    more_users_or_zones_than_the_control_unit_has,
    abort_delay_outside_its_range,
)
"""In code order."""
