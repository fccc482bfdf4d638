"""Money: exact decimals, and how they are rounded.

Each line is rounded to whole cents, half up. Tax is worked out once, on the sum of the
rounded lines, and rounded alike.
"""

from __future__ import annotations

from collections.abc import Iterable
from decimal import ROUND_HALF_UP, Decimal
from typing import Annotated

from pydantic import Field

CENT = Decimal("0.01")
HUNDRED = Decimal(100)
MINUTES = Decimal(60)
"""In an hour."""

Money = Annotated[Decimal, Field(ge=0, le=10_000_000, decimal_places=2)]
"""A price or a cost, in whole cents."""
Percent = Annotated[Decimal, Field(ge=0, le=1000, decimal_places=3)]


def exact(value: float) -> Decimal:
    """A number of the catalogue as it is written there, not as the machine keeps it.

    Examples
    --------
    >>> exact(0.1) * 3
    Decimal('0.3')
    """
    return Decimal(repr(value)) if isinstance(value, float) else Decimal(value)


def to_cents(value: Decimal) -> Decimal:
    """An amount in whole cents, half a cent up.

    Examples
    --------
    >>> to_cents(Decimal("2.675")), to_cents(Decimal("2.6649"))
    (Decimal('2.68'), Decimal('2.66'))
    """
    return value.quantize(CENT, rounding=ROUND_HALF_UP)


def share_of(amount: Decimal, percent: Decimal) -> Decimal:
    """So many per cent of an amount, in whole cents.

    Examples
    --------
    >>> share_of(Decimal("99.99"), Decimal(20))
    Decimal('20.00')
    """
    return to_cents(amount * percent / HUNDRED)


def total(amounts: Iterable[Decimal | None]) -> Decimal | None:
    """The sum; None where one of them is not known: it is never taken for nought.

    Examples
    --------
    >>> total([Decimal("1.10"), Decimal("2.20")]), total([Decimal("1.10"), None])
    (Decimal('3.30'), None)
    """
    found = Decimal("0.00")
    for amount in amounts:
        if amount is None:
            return None
        found += amount
    return found
