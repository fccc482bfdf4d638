"""Words for messages: an entry of a list, a value, the word that was probably meant."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping, Sequence
from difflib import get_close_matches


def suggestion(word: str, known: Sequence[str]) -> str | None:
    """The known word nearest to a misspelt one; None when nothing is near.

    Parameters
    ----------
    word : str
        What was written.
    known : sequence of str
        What could have been meant.

    Returns
    -------
    str or None
        The nearest.

    Examples
    --------
    >>> suggestion("widht_m", ["width_m", "head_m"])
    'width_m'
    >>> suggestion("colour", ["width_m", "head_m"]) is None
    True
    """
    near = get_close_matches(word, known, n=1, cutoff=0.6)
    return near[0] if near else None


def label(list_name: str, index: int, entry: object) -> str:
    """An entry of a list in words: its place, its name, its id.

    Parameters
    ----------
    list_name : str
        The list's key, such as `openings`.
    index : int
        The entry's place in it, from 0.
    entry : object
        The entry itself, a mapping or a record.

    Returns
    -------
    str
        Such as `openings[3] "kitchen window" (window-2)`.

    Examples
    --------
    >>> label("openings", 3, {"name": "kitchen window", "id": "window-2"})
    'openings[3] "kitchen window" (window-2)'
    """
    words = f"{list_name}[{index}]"
    name, ident = _attribute(entry, "name"), _attribute(entry, "id")
    if isinstance(name, str) and name:
        words += f' "{short(name)}"'
    if isinstance(ident, str) and ident:
        words += f" ({short(ident)})"
    return words


def shown(value: object) -> str:
    """A value as it may stand in a message: short, and never a whole branch of a document."""
    match value:
        case None:
            return "nothing (null)"
        case bool():
            return "true" if value else "false"
        case str():
            return f"the text '{short(value)}'"
        case int() | float():
            return f"the number {short(str(value))}"
        case Mapping():
            return "an object in braces"
        case _:
            return "a list"


def short(text: str) -> str:
    """Text from outside as it may stand in a message: one line, printable, at most 60 letters."""
    flat = masked(" ".join(text.split()))
    flat = "".join(c for c in flat if c.isprintable())
    return flat if len(flat) <= 60 else flat[:57] + "..."


_TURNERS = frozenset("\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
"""Signs that turn the direction of the text after them."""


def is_plain(text: str) -> bool:
    r"""Whether text holds only letters and signs that can be shown, none that a terminal or a page would obey.

    Examples
    --------
    >>> is_plain("Küche\u00a01"), is_plain("hall\x1b[2J"), is_plain("a\ttab")
    (True, False, False)
    """
    return not any(unicodedata.category(sign) in {"Cc", "Cs"} or sign in _TURNERS for sign in text)


def made_plain(text: str) -> str:
    r"""Text without what `is_plain` minds; a space for each.

    Examples
    --------
    >>> made_plain("hall\tnorth")
    'hall north'
    """
    return " ".join("".join(sign if is_plain(sign) else " " for sign in text).split())


def _attribute(entry: object, key: str) -> object:
    return entry.get(key) if isinstance(entry, Mapping) else getattr(entry, key, None)


_SECRET = re.compile(
    r"(?<!post )(?<!post-)(?<!zip )(?<!area )\b(?:code|pin|passcode|password)s?\b[^0-9a-z]*"
    r"(?:(?:is|no|number|nr)\b[^0-9a-z]*)?(\d{4,8})(?!\d)",
    re.IGNORECASE,
)


def holds_secret(text: str) -> bool:
    """Whether text looks as if it held somebody's code.

    Examples
    --------
    >>> holds_secret("keypad, code is 4711"), holds_secret("keypad 2, post code 10115")
    (True, False)
    """
    return _SECRET.search(text) is not None


def masked(text: str) -> str:
    """Text with what looks like somebody's code starred out.

    Examples
    --------
    >>> masked("hall keypad PIN: 471122")
    'hall keypad PIN: ****'
    """
    return _SECRET.sub(lambda found: found[0][: found.start(1) - found.start(0)] + "****", text)


def and_more(count: int) -> str:
    """How many more faults there are, to be put after the first.

    Examples
    --------
    >>> and_more(0), and_more(1), and_more(3)
    ('', ' (and 1 more fault)', ' (and 3 more faults)')
    """
    if count <= 0:
        return ""
    return f" (and {count} more fault{'' if count == 1 else 's'})"
