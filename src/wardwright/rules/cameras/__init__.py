"""Rules about cameras: codes CAM."""

from __future__ import annotations

from wardwright.rules.cameras.camera_height_outside_its_sheet import camera_height_outside_its_sheet
from wardwright.rules.cameras.camera_in_a_private_space import camera_in_a_private_space
from wardwright.rules.cameras.camera_sees_beyond_the_boundary import camera_sees_beyond_the_boundary
from wardwright.rules.cameras.face_not_recognisable_at_the_door import face_not_recognisable_at_the_door
from wardwright.rules.cameras.inside_camera_open_when_people_are_home import (
    inside_camera_open_when_people_are_home,
)
from wardwright.rules.cameras.outside_camera_only_served_by_leaning_from_a_window import (
    outside_camera_only_served_by_leaning_from_a_window,
)
from wardwright.rules.cameras.outside_camera_within_reach import outside_camera_within_reach
from wardwright.rules.registry import Rule

CAMERA_RULES: tuple[Rule, ...] = (
    outside_camera_within_reach,
    outside_camera_only_served_by_leaning_from_a_window,
    inside_camera_open_when_people_are_home,
    camera_height_outside_its_sheet,
    camera_sees_beyond_the_boundary,
    camera_in_a_private_space,
    face_not_recognisable_at_the_door,
)
"""In code order."""
