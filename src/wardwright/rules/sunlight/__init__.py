"""Rules about the sun: codes SUN."""

from __future__ import annotations

from wardwright.rules.registry import Rule
from wardwright.rules.sunlight.movement_detector_faces_sun import movement_detector_faces_sun
from wardwright.rules.sunlight.sun_patch_crosses_its_view import sun_patch_crosses_its_view

SUNLIGHT_RULES: tuple[Rule, ...] = (movement_detector_faces_sun, sun_patch_crosses_its_view)
"""In code order."""
