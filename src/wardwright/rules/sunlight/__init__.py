"""Rules about the sun: codes SUN."""

from __future__ import annotations

from wardwright.rules.registry import Rule
from wardwright.rules.sunlight.movement_detector_faces_sun import movement_detector_faces_sun
from wardwright.rules.sunlight.sun_patch_crosses_its_view import sun_patch_crosses_its_view
from wardwright.rules.sunlight.sun_thrown_on_movement_detector import sun_thrown_on_movement_detector

SUNLIGHT_RULES: tuple[Rule, ...] = (
    movement_detector_faces_sun,
    sun_patch_crosses_its_view,
    sun_thrown_on_movement_detector,
)
"""In code order."""
