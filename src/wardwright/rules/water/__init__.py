"""Rules about water detectors: codes WTR."""

from __future__ import annotations

from wardwright.rules.registry import Rule
from wardwright.rules.water.water_detector_away_from_water import water_detector_away_from_water
from wardwright.rules.water.water_detector_off_the_floor import water_detector_off_the_floor

WATER_RULES: tuple[Rule, ...] = (water_detector_off_the_floor, water_detector_away_from_water)
"""In code order."""
