"""Which letters a PDF can show: a name in others is told with a sign in their place, never by stopping."""

from __future__ import annotations

SIGN = "\u25a1"
"""An empty box, for a letter that cannot be shown."""
SAYS = f"{SIGN} stands for a letter that this paper cannot show."

_RANGES = (
    "20-7e a0-36f 374-375 37a-37e 384-38a 38c 38e-3a1 3a3-3ce 3d0-513 51a-51d 591-5c7 5d0-5ea 5f0-5f4 1d00-1dca "
    "1dfe-1e9b 1e9e 1ea0-1ef9 1f00-1f15 1f18-1f1d 1f20-1f45 1f48-1f4d 1f50-1f57 1f59 1f5b 1f5d 1f5f-1f7d 1f80-1fb4 "
    "1fb6-1fc4 1fc6-1fd3 1fd6-1fdb 1fdd-1fef 1ff2-1ff4 1ff6-1ffe 2010 2012-2022 2026 2030 2032-2034 2039-203a 203c "
    "2044 20a0-20b5 20bf 2105 2113 2116-2117 2122 2126 2190-2195 2202 2206 220f 2211-2212 2248 2260 2264-2265 "
    "25a0-25a1"
)
"""Code points, in hexadecimal, that the letters in `fonts` have in every style; signs that no name needs left out."""


def _spread(ranges: str) -> frozenset[int]:
    ends = [piece.split("-") for piece in ranges.split()]
    return frozenset(code for pair in ends for code in range(int(pair[0], 16), int(pair[-1], 16) + 1))


LETTERS = _spread(_RANGES)
_KEPT = frozenset(map(ord, "\n\t"))


def shown(text: str) -> str:
    """A text with a sign for every letter that our fonts lack.

    Examples
    --------
    >>> shown("K\u00fcche \u0141\u00f3d\u017a") == "K\u00fcche \u0141\u00f3d\u017a", shown("\u5ba2 room")
    (True, '\u25a1 room')
    """
    return "".join(letter if ord(letter) in LETTERS or ord(letter) in _KEPT else SIGN for letter in text)
