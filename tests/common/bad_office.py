"""Bad firm's files and price lists, each by its name."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable

FIRM = b'name = "Example"\n[rates]\ncurrency = "GBP"\nlabour_per_hour = 48.10\n'


def _bomb() -> bytes:
    """40 MB of nought in a few kilobytes."""
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("xl/bomb", b"\0" * 40_000_000)
    return made.getvalue()


FIRMS: dict[str, Callable[[], bytes]] = {
    "not-toml": lambda: FIRM + b"name",
    "a-key-misspelt": lambda: FIRM.replace(b"labour_per_hour", b"labor_per_hour"),
    "a-key-unknown": lambda: FIRM + b"discount = 3\n",
    "a-key-missing": lambda: FIRM.replace(b'currency = "GBP"\n', b""),
    "a-rate-below-nought": lambda: FIRM.replace(b"48.10", b"-48.10"),
    "a-rate-in-words": lambda: FIRM.replace(b"48.10", b'"dear"'),
    "a-currency-that-is-none": lambda: FIRM.replace(b'"GBP"', b'"pounds"'),
    "a-logo-elsewhere": lambda: b'logo = "../logo.png"\n' + FIRM,
    "a-code-in-its-terms": lambda: FIRM + b'[[text]]\nheading = "Keypad"\ntext = "PIN: 471122"\n',
}
LISTS: dict[str, Callable[[], bytes]] = {
    "nothing": lambda: b"\n\n",
    "a-column-misspelt": lambda: b"code,costs\na,1\n",
    "no-column-of-codes": lambda: b"cost,price\n1,2\n",
    "a-price-below-nought": lambda: b"code,cost,price\nkeypad-radio,40,-1\n",
    "a-price-in-words": lambda: b"code,price\nkeypad-radio,dear\n",
    "a-third-decimal": lambda: b"code,price\nkeypad-radio,1.999\n",
    "a-day-written-otherwise": lambda: b"code,price,date\nkeypad-radio,1,31/03/2026\n",
    "a-code-twice": lambda: b"code,price\nkeypad-radio,1\nmovement-12m,2\nkeypad-radio,3\n",
    "a-quote-left-open": lambda: b'code,price\n"keypad-radio,1\n',
}
BOOKS: dict[str, Callable[[], bytes]] = {"no-archive": lambda: b"code,cost\n", "a-bomb": _bomb}
