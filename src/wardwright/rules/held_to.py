"""How grave it is to miss a limit: by how the limit itself is known."""

from __future__ import annotations

from wardwright.model.limits import Limit
from wardwright.rules.finding import Severity


def severity_by(limit: Limit) -> Severity:
    """`check with the standard` where it is from memory or disputed, else `advise`."""
    return "check with the standard" if limit.is_to_be_checked else "advise"
