"""Rules about the links between devices and the control unit, and what devices are rated for: codes LNK."""

from __future__ import annotations

from wardwright.rules.links.check_in_slower_than_the_grade_asks import check_in_slower_than_the_grade_asks
from wardwright.rules.links.device_grade_below_the_grade_aimed_at import device_grade_below_the_grade_aimed_at
from wardwright.rules.links.environmental_class_unfit_for_its_place import (
    environmental_class_unfit_for_its_place,
)
from wardwright.rules.links.jamming_told_too_late import jamming_told_too_late
from wardwright.rules.links.metal_or_coated_glass_in_the_way import metal_or_coated_glass_in_the_way
from wardwright.rules.links.radio_margin_under_its_limit import radio_margin_under_its_limit
from wardwright.rules.registry import Rule

LINK_RULES: tuple[Rule, ...] = (
    check_in_slower_than_the_grade_asks,
    device_grade_below_the_grade_aimed_at,
    environmental_class_unfit_for_its_place,
    radio_margin_under_its_limit,
    metal_or_coated_glass_in_the_way,
    jamming_told_too_late,
)
"""In code order."""
