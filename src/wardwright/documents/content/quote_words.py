"""A quote in words: what each option changes, and its lines."""

from __future__ import annotations

import re
from decimal import Decimal
from typing import cast

from wardwright.costing.option import OptionChange, QuoteLine, QuoteOption
from wardwright.costing.quote import Quote
from wardwright.documents.content.discretion import WITHHELD, discreet
from wardwright.documents.content.protection_words import NOTICED, THROUGH_GLASS
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import kind_words
from wardwright.model.site import Site
from wardwright.questions.protection import Noticed

NO_PRICE = "no price is known"
AS_IT_IS = "as the plan shows"


def change_words(change: OptionChange, site: Site, catalogue: Catalogue) -> str:
    """One thing that an option changes, fit for the client's copy: no time, no length, no place of kit.

    Parameters
    ----------
    change : OptionChange
        As data.
    site : Site
        The design as it stands.
    catalogue : Catalogue
        Says whose place is not told.

    Returns
    -------
    str
        Without a full stop.
    """
    if change.what == "device":
        if change.name in map(kind_words, WITHHELD):
            return f"{_an(change.name)} more"
        rooms = {space.id: space.name for space in site.spaces}
        room = rooms.get(change.subject, "")
        return f"{_an(change.name)} more" + (f" in {discreet(room, site, catalogue)}" if room else "")
    words = THROUGH_GLASS if change.is_glass else NOTICED
    name = discreet(change.name, site, catalogue) + (", through its glass" if change.is_glass else "")
    before, after = (words[cast("Noticed", one)].partition(":")[0] for one in (change.before, change.after))
    return f"{name}: {after}, where now it is {before}"


def _an(words: str) -> str:
    return f"{'an' if words[:1].lower() in 'aeiou' else 'a'} {words}"


def money_words(amount: Decimal | None, currency: str) -> str:
    """An amount with its currency.

    Examples
    --------
    >>> money_words(Decimal("1508.36"), "GBP"), money_words(None, "GBP"), money_words(Decimal("2.5"), "XXX")
    ('1508.36 GBP', 'not known', '2.50')
    """
    if amount is None:
        return "not known"
    return f"{amount:.2f}" if currency == "XXX" else f"{amount:.2f} {currency}"


def sums_of(option: QuoteOption, quote: Quote) -> tuple[tuple[str, Decimal | None], ...]:
    """What an option comes to, each sum with what it is called: before tax, the tax, in all. [currency]"""
    return (("before tax", option.net), (tax_words(quote), option.tax), ("in all", option.gross))


def tax_words(quote: Quote) -> str:
    """What the tax is called, with its share where that is known."""
    return (
        quote.tax_name
        if quote.tax_percent is None
        else f"{quote.tax_name} {percent_words(quote.tax_percent)}"
    )


def percent_words(share: Decimal) -> str:
    """A share as the firm writes it.

    Examples
    --------
    >>> percent_words(Decimal("20.0")), percent_words(Decimal("7.25"))
    ('20 %', '7.25 %')
    """
    return f"{share.normalize():f} %"


def count_words(line: QuoteLine) -> str:
    """How many of a line, with its unit."""
    if line.unit == "each":
        return f"{line.count:f}"
    if line.kind == "return visit":
        return f"{line.count * 100:.0f} %"
    return f"{line.count:f} {line.unit}" if line.unit else ""


def without_numbers(name: str) -> str:
    """A battery or a part by what it is, without its number of trade: a copy with no long numbers asks for no more.

    Examples
    --------
    >>> without_numbers("lithium cell CR17345 (CR123A)"), without_numbers("alkaline cell LR6 (AA)")
    ('lithium cell', 'alkaline cell')
    """
    return " ".join(word for word in name.split() if not re.search(r"\d|^\(", word)) or name
