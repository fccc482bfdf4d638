"""Rules about movement detectors: codes MOV."""

from __future__ import annotations

from wardwright.rules.movement.animal_can_climb_into_view import animal_can_climb_into_view
from wardwright.rules.movement.animal_heavier_than_its_detector_passes import (
    animal_heavier_than_its_detector_passes,
)
from wardwright.rules.movement.movement_detector_above_hot_thing import movement_detector_above_hot_thing
from wardwright.rules.movement.movement_detector_facing_glass import movement_detector_facing_glass
from wardwright.rules.movement.movement_detector_height_outside_its_sheet import (
    movement_detector_height_outside_its_sheet,
)
from wardwright.rules.movement.movement_detector_reach_shorter_than_its_space import (
    movement_detector_reach_shorter_than_its_space,
)
from wardwright.rules.movement.sensitivity_high_where_it_need_not_be import (
    sensitivity_high_where_it_need_not_be,
)
from wardwright.rules.movement.strong_light_straight_on_movement_detector import (
    strong_light_straight_on_movement_detector,
)
from wardwright.rules.registry import Rule

MOVEMENT_RULES: tuple[Rule, ...] = (
    movement_detector_above_hot_thing,
    movement_detector_height_outside_its_sheet,
    movement_detector_facing_glass,
    movement_detector_reach_shorter_than_its_space,
    strong_light_straight_on_movement_detector,
    animal_heavier_than_its_detector_passes,
    animal_can_climb_into_view,
    sensitivity_high_where_it_need_not_be,
)
"""In code order."""
