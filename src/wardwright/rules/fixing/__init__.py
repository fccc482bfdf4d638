"""Rules about how devices are held: codes FIX."""

from __future__ import annotations

from wardwright.rules.fixing.adhesive_on_unfit_surface import adhesive_on_unfit_surface
from wardwright.rules.fixing.adhesive_where_screws_are_needed import adhesive_where_screws_are_needed
from wardwright.rules.registry import Rule

FIXING_RULES: tuple[Rule, ...] = (
    adhesive_on_unfit_surface,
    adhesive_where_screws_are_needed,
)
"""In code order."""
