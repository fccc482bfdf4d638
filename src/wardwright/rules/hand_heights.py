"""Heights between which a hand works a device: its sheet, the people of the house, published figures."""

from __future__ import annotations

from typing import NamedTuple

from wardwright.model.catalogue import Catalogue
from wardwright.model.device_sheets import ButtonSheet
from wardwright.model.limits import Limit
from wardwright.model.site import Site
from wardwright.rules.finding import Severity
from wardwright.rules.held_to import severity_by

ROUNDING_M = 1e-6
"""Heights closer to a limit than this are the limit. [m] (assumption)"""


class Span(NamedTuple):
    """Between which heights, who says so, and how grave it is to be outside."""

    low_m: float
    high_m: float
    words: str
    """Goes after `higher than` or `lower than`."""
    severity: Severity

    def holds(self, height_m: float) -> bool:
        """Whether a height is inside."""
        return self.low_m - ROUNDING_M <= height_m <= self.high_m + ROUNDING_M


def of_sheet(button: ButtonSheet | None) -> tuple[Span, ...]:
    """What the device's own sheet says; empty where it is silent."""
    if button is None or (button.height_low_m is None and button.height_high_m is None):
        return ()
    low = 0.0 if button.height_low_m is None else button.height_low_m
    high = 3.0 if button.height_high_m is None else button.height_high_m
    return (Span(low, high, "its sheet says", "must mend"),)


def of_people(site: Site, catalogue: Catalogue) -> tuple[Span, ...]:
    """What everybody who uses the alarm reaches, children apart; empty where nobody is told."""
    rows = {row.id: row for row in catalogue.walkers}
    people = [one for one in sorted(site.people, key=lambda p: p.id) if one.pace in rows and not one.is_child]
    if not people:
        return ()
    highest = min(people, key=lambda one: (rows[one.pace].reach_high_m, one.id))
    lowest = max(people, key=lambda one: (rows[one.pace].reach_low_m, one.id))
    low, high = rows[lowest.pace].reach_low_m, rows[highest.pace].reach_high_m
    return (Span(low, high, f"{highest.name} reaches with ease", "advise"),)


def of_limits(least: Limit, most: Limit) -> tuple[Span, ...]:
    """What published or remembered figures say, as grave as the upper one is."""
    return (Span(least.value, most.value, "public guidance says", severity_by(most)),)


def best_height(spans: tuple[Span, ...], height_m: float) -> float:
    """The nearest height inside all spans; of those that cannot be had together the first ones count.

    Examples
    --------
    >>> spans = (Span(0.9, 1.5, "", "must mend"), Span(0.7, 1.2, "", "advise"))
    >>> best_height(spans, 1.6), best_height(spans, 1.0)
    (1.2, 1.0)
    """
    low, high = 0.0, 3.0
    for span in spans:
        if max(low, span.low_m) <= min(high, span.high_m):
            low, high = max(low, span.low_m), min(high, span.high_m)
    return min(max(height_m, low), high)
