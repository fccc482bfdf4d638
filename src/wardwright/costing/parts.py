"""What is bought for a job: how many of each device sheet, what one costs and what it is sold at."""

from __future__ import annotations

from collections import Counter
from decimal import Decimal
from typing import TYPE_CHECKING, NamedTuple

from wardwright.costing.money import exact, to_cents
from wardwright.costing.rates import Rates
from wardwright.costing.tasks import new_devices
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site

if TYPE_CHECKING:  # not loaded by `ask`, whose budget is small
    from wardwright.costing.price_list import PriceList


class Part(NamedTuple):
    """One device sheet, and how many of it are fitted."""

    sheet: str
    name: str
    needed: int
    cost: Decimal | None
    """Of one; None: not known. [currency]"""
    each: Decimal | None
    """What the customer pays for one, before tax; None: not known. [currency]"""
    is_marked_up: bool
    """Whether the price hangs on the mark-up."""

    @property
    def base(self) -> Decimal | None:
        """What consumables are a share of: the cost of them all, else their price. [currency]"""
        one = self.cost if self.cost is not None else self.each
        return None if one is None else self.needed * one


def parts_of(
    site: Site, catalogue: Catalogue, rates: Rates, *, prices: PriceList | None = None
) -> tuple[Part, ...]:
    """What is bought for a job.

    Parameters
    ----------
    site : Site
        Its new devices count.
    catalogue : Catalogue
        Sheets with their made-up prices, which count only where no price list is given.
    rates : Rates
        The mark-up.
    prices : PriceList, optional
        The firm's own: a sheet that is not in it has no price that is known.

    Returns
    -------
    tuple of Part
        In the order of ids.
    """
    counts = Counter(device.sheet for device in new_devices(site))
    found = []
    for ident, count in sorted(counts.items()):
        sheet = catalogue.sheet(ident)
        if prices is None:
            cost, each = None if sheet.price is None else exact(sheet.price), None
        else:
            row = prices.of(ident)
            cost, each = (None, None) if row is None else (row.cost, row.price)
        is_marked_up = each is None and cost is not None
        if each is None and cost is not None:
            each = to_cents(cost * (1 + rates.mark_up.exact))
        found.append(Part(ident, sheet.name, count, cost, each, is_marked_up))
    return tuple(found)
