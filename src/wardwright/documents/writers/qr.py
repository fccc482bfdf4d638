"""A text as a QR code: dark squares on white, with the quiet rim that readers need."""

from __future__ import annotations

from functools import lru_cache
from io import BytesIO

RIM = 4
"""White squares round it, as ISO/IEC 18004 asks (from memory). [-]"""


@lru_cache(maxsize=512)
def qr_svg(text: str) -> str:
    """Draw a text as a QR code.

    Parameters
    ----------
    text : str
        What a reader shows: it must be safe for whoever can see it.

    Returns
    -------
    str
        A picture that scales; the same text gives the same picture.
    """
    import segno  # noqa: PLC0415 - only labels need it

    # Beyond plain letters a reader has to be told the coding, or it guesses.
    out = BytesIO()
    code = segno.make(
        text, error="m", micro=False, boost_error=False, encoding="utf-8", eci=not text.isascii()
    )
    code.save(out, kind="svg", border=RIM, xmldecl=False, svgns=True, nl=False, light="#ffffff")
    return out.getvalue().decode()
