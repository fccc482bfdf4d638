"""What an attachment is, told by its content and not by its name."""

from __future__ import annotations

PICTURES = ("image/jpeg", "image/png", "image/gif", "image/webp", "image/heic")
READINGS = "text/csv"
TEXT = "text/plain"
PDF = "application/pdf"

_BEGINNINGS = (
    (b"\xff\xd8\xff", "image/jpeg"),
    (b"\x89PNG\r\n\x1a\n", "image/png"),
    (b"GIF87a", "image/gif"),
    (b"GIF89a", "image/gif"),
    (b"%PDF-", PDF),
)
_HEIC = (b"heic", b"heix", b"mif1", b"msf1")
"""Brands that a telephone's own pictures carry after `ftyp`."""
_SEPARATORS = (";", "\t", ",")
_LOOKED_AT = 200
"""How many lines are looked at to tell readings from running text. [-] (assumption)"""


def kind_of(content: bytes) -> str | None:
    r"""The media type of a picture, a PDF, readings or text; None for anything else.

    Parameters
    ----------
    content : bytes
        The whole of it.

    Returns
    -------
    str or None
        Markup that a browser would run, such as SVG or HTML, is text like any other.

    Examples
    --------
    >>> kind_of(b"%PDF-1.7 ..."), kind_of(b"time;level\n07:00;-71\n"), kind_of(b"MZ\x00\x90")
    ('application/pdf', 'text/csv', None)
    """
    for beginning, kind in _BEGINNINGS:
        if content.startswith(beginning):
            return kind
    if content[:4] == b"RIFF" and content[8:12] == b"WEBP":
        return "image/webp"
    if content[4:8] == b"ftyp" and content[8:12] in _HEIC:
        return "image/heic"
    text = text_of(content)
    if text is None or not text.strip():
        return None
    return READINGS if _is_table(text) else TEXT


def text_of(content: bytes) -> str | None:
    """The text, a mark of byte order at its head taken off; None if it is none in UTF-8."""
    try:
        text = content.decode("utf-8")
    except UnicodeDecodeError:
        return None
    return None if "\0" in text else text.removeprefix("\ufeff")


def _is_table(text: str) -> bool:
    lines = [line for line in text.splitlines() if line.strip()][:_LOOKED_AT]
    counts = ({line.count(sign) for line in lines} for sign in _SEPARATORS)
    return len(lines) > 1 and any(len(count) == 1 and 0 not in count for count in counts)
