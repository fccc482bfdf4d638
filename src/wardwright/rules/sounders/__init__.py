"""Rules about sounders: codes SND."""

from __future__ import annotations

from wardwright.rules.registry import Rule
from wardwright.rules.sounders.ear_too_near_a_sounder import ear_too_near_a_sounder
from wardwright.rules.sounders.one_sounder_only import one_sounder_only
from wardwright.rules.sounders.outside_sounder_heard_by_nobody import outside_sounder_heard_by_nobody
from wardwright.rules.sounders.outside_sounder_within_reach import outside_sounder_within_reach
from wardwright.rules.sounders.pillow_that_hears_too_little import pillow_that_hears_too_little
from wardwright.rules.sounders.sounder_within_quick_reach import sounder_within_quick_reach

SOUNDER_RULES: tuple[Rule, ...] = (
    sounder_within_quick_reach,
    outside_sounder_within_reach,
    one_sounder_only,
    pillow_that_hears_too_little,
    ear_too_near_a_sounder,
    outside_sounder_heard_by_nobody,
)
"""In code order."""
