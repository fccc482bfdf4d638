"""Rules about names as programmed, printed and spoken: codes NAM."""

from __future__ import annotations

from wardwright.rules.names.left_or_right_without_convention import left_or_right_without_convention
from wardwright.rules.names.name_not_clear_or_not_unique import name_not_clear_or_not_unique
from wardwright.rules.names.name_not_unique_after_cutting_to_display import (
    name_not_unique_after_cutting_to_display,
)
from wardwright.rules.registry import Rule

NAME_RULES: tuple[Rule, ...] = (
    name_not_clear_or_not_unique,
    name_not_unique_after_cutting_to_display,
    left_or_right_without_convention,
)
"""In code order."""
