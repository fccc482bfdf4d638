"""The day on which papers are drawn up."""

from __future__ import annotations

import os
from datetime import UTC, date, datetime

FIXED = "SOURCE_DATE_EPOCH"
"""The variable of the environment by which what must come out the same fixes its day, in seconds since 1970."""


def today() -> date:
    """Today by this machine's clock, or the day that the environment fixes."""
    fixed = os.environ.get(FIXED, "")
    if fixed.isdecimal():
        return datetime.fromtimestamp(int(fixed), tz=UTC).date()
    return datetime.now().astimezone().date()
