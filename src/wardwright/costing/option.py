"""One way of doing a job, priced: lines in exact money, what it changes, hours and price with their ranges."""

from __future__ import annotations

from decimal import Decimal
from typing import Literal

from wardwright.costing.money import total
from wardwright.model.estimate import Estimate
from wardwright.model.record import Record
from wardwright.rules.finding import Mend

LineKind = Literal["part", "consumables", "work", "travel", "contingency", "return visit"]
ALLOWANCES: tuple[LineKind, ...] = ("contingency", "return visit")
"""What a firm reckons with and a customer is not told apart: it goes into the work."""


class QuoteLine(Record):
    """One line: so many of something."""

    kind: LineKind
    code: str
    """Id of a device sheet, or the phase of the work."""
    what: str
    count: Decimal
    unit: Literal["each", "min", "journeys", ""]
    """Of the count; empty: the line is one sum."""
    each: Decimal | None
    """Price of one, before tax; of work, of an hour; None: not known. [currency]"""
    amount: Decimal | None
    """Before tax, in whole cents; None: not known. [currency]"""
    cost: Decimal | None = None
    """What the firm pays for the parts of this line; None: not known, or no parts. [currency]"""
    reason: str = ""
    """Why something is not known."""


class OptionChange(Record):
    """One thing that an option changes for the people who live there: nothing measured, no place of kit."""

    what: Literal["opening", "device"]
    """An opening that is noticed otherwise, or a device that is added."""
    name: str
    """Of the opening; of a device, its kind."""
    subject: str = ""
    """Id of the opening; of a device, of the room, empty where its place is not told."""
    is_glass: bool = False
    """Of an opening: through its glass."""
    before: str = ""
    after: str = ""
    """Of an opening: how it is noticed, as a word of `questions.protection`."""


class QuoteOption(Record):
    """The job in one way of doing it."""

    name: str
    changes: tuple[OptionChange, ...] = ()
    """What it changes, against the design as it stands."""
    mends: tuple[Mend, ...] = ()
    """What is done for it, for the fitter alone."""
    lines: tuple[QuoteLine, ...]
    net: Decimal | None
    """Before tax; None: the price of a part is not known. [currency]"""
    tax: Decimal | None
    """None: the price, or the tax of the place, is not known. [currency]"""
    gross: Decimal | None
    """With tax; None: either is not known. [currency]"""
    difference: Decimal | None = None
    """Its price less that of the first option, both with tax where that is known; None: not known. [currency]"""
    hours: Estimate
    """Of all the work, travel included. [h]"""
    days: int
    """Days of work on site, the survey left out."""
    price: Estimate | None
    """With tax where that is known. [currency]"""
    not_priced: tuple[str, ...] = ()
    """Parts without a price: one sentence each."""

    @property
    def for_the_customer(self) -> tuple[QuoteLine, ...]:
        """The lines as a customer reads them: allowances are part of the work, costs are left out.

        The sum is the same.
        """
        in_work = [line for line in self.lines if line.kind in ("work", *ALLOWANCES)]
        work = QuoteLine(
            kind="work",
            code="work",
            what="work",
            count=Decimal(1),
            unit="",
            each=None,
            amount=total(line.amount for line in in_work),
        )
        shown: list[QuoteLine] = []
        for line in self.lines:
            if line not in in_work:
                shown.append(line.model_copy(update={"cost": None}))
            elif work not in shown:
                shown.append(work)
        return tuple(shown)
