"""Rules about glass-break and shock detectors: codes GLS."""

from __future__ import annotations

from wardwright.rules.glass.large_fixed_pane_without_detection import large_fixed_pane_without_detection
from wardwright.rules.glass.pane_behind_curtain_too_far import pane_behind_curtain_too_far
from wardwright.rules.glass.pane_beyond_reach_of_its_glass_break_detector import (
    pane_beyond_reach_of_its_glass_break_detector,
)
from wardwright.rules.glass.pane_not_of_a_kind_it_knows import pane_not_of_a_kind_it_knows
from wardwright.rules.glass.shock_detector_beyond_its_radius_or_on_unfit_surface import (
    shock_detector_beyond_its_radius_or_on_unfit_surface,
)
from wardwright.rules.registry import Rule

GLASS_RULES: tuple[Rule, ...] = (
    pane_beyond_reach_of_its_glass_break_detector,
    pane_behind_curtain_too_far,
    pane_not_of_a_kind_it_knows,
    large_fixed_pane_without_detection,
    shock_detector_beyond_its_radius_or_on_unfit_surface,
)
"""In code order."""
