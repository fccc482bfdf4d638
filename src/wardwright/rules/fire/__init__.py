"""Rules about smoke, heat and CO alarms: codes FIR.

Each is a check of distances, not a fire design: the local code and licensed practice decide.
"""

from __future__ import annotations

from wardwright.rules.fire.alarm_colder_or_warmer_than_its_sheet import alarm_colder_or_warmer_than_its_sheet
from wardwright.rules.fire.alarm_height_outside_its_range import alarm_height_outside_its_range
from wardwright.rules.fire.alarm_off_the_apex_of_a_sloped_ceiling import (
    alarm_off_the_apex_of_a_sloped_ceiling,
)
from wardwright.rules.fire.alarm_too_near_a_wall import alarm_too_near_a_wall
from wardwright.rules.fire.burning_appliance_without_co_alarm import burning_appliance_without_co_alarm
from wardwright.rules.fire.co_alarm_at_the_wrong_distance_from_its_appliance import (
    co_alarm_at_the_wrong_distance_from_its_appliance,
)
from wardwright.rules.fire.heat_alarm_beyond_its_reach import heat_alarm_beyond_its_reach
from wardwright.rules.fire.smoke_alarm_far_from_a_room_door import smoke_alarm_far_from_a_room_door
from wardwright.rules.fire.smoke_alarm_too_near_cooking_or_damp import smoke_alarm_too_near_cooking_or_damp
from wardwright.rules.fire.storey_or_bedroom_without_smoke_alarm import storey_or_bedroom_without_smoke_alarm
from wardwright.rules.registry import Rule

FIRE_RULES: tuple[Rule, ...] = (
    smoke_alarm_far_from_a_room_door,
    storey_or_bedroom_without_smoke_alarm,
    alarm_too_near_a_wall,
    alarm_height_outside_its_range,
    smoke_alarm_too_near_cooking_or_damp,
    heat_alarm_beyond_its_reach,
    alarm_off_the_apex_of_a_sloped_ceiling,
    burning_appliance_without_co_alarm,
    co_alarm_at_the_wrong_distance_from_its_appliance,
    alarm_colder_or_warmer_than_its_sheet,
)
"""In code order."""
