"""Houses for the rules with codes SRV."""

from __future__ import annotations

from common.rule_houses.form import Houses

HOUSES: dict[str, Houses] = {}
