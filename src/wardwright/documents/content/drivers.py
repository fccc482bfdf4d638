"""What moves an answer, and how often a need is met: in words, without drawings."""

from __future__ import annotations

from dataclasses import dataclass

from wardwright.documents.content.quantities import quantity, step_of
from wardwright.documents.content.wording import BASES
from wardwright.model.estimate import Estimate

DRIVERS_SHOWN = 2
"""How many inputs are named. [-]"""


@dataclass(frozen=True, slots=True)
class DriverLine:
    """One input that moves an answer."""

    name: str
    swing: str
    basis: str
    basis_words: str
    share: float
    """Its swing as a share of the largest, for a bar. [-]"""


def chance_words(chance: float | None) -> str:
    """A chance in whole per cent, never rounded up to certainty.

    Examples
    --------
    >>> chance_words(0.534), chance_words(0.999), chance_words(1.0), chance_words(0.0)
    ('met in 53 % of draws', 'met in over 99 % of draws', 'met in all draws', 'met in no draw')
    """
    if chance is None:
        return ""
    if chance in (0.0, 1.0):
        return "met in all draws" if chance else "met in no draw"
    if chance > 0.99 or chance < 0.01:
        return f"met in {'over 99' if chance > 0.5 else 'under 1'} % of draws"
    return f"met in {chance * 100.0:.0f} % of draws"


def driver_lines(estimate: Estimate, *, is_plain: bool = False) -> tuple[DriverLine, ...]:
    """The inputs that move an answer most, at most two."""
    shown = [driver for driver in estimate.drivers[:DRIVERS_SHOWN] if driver.swing > 0.0]
    if not shown:
        return ()
    largest = max(driver.swing for driver in shown)
    lines = []
    for driver in shown:
        step = step_of(estimate) if driver.swing >= 1.0 or estimate.unit == "-" else 0.1
        swing = quantity(driver.swing, estimate.unit, step, is_plain=is_plain)
        lines.append(
            DriverLine(
                driver.name, swing, driver.basis, BASES[driver.basis], round(driver.swing / largest, 3)
            )
        )
    return tuple(lines)
