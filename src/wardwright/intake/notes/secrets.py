"""Lines of notes that hold a code: refused, so that none is ever stored or printed."""

from __future__ import annotations

import re

from wardwright.errors import NotesError

_DIGITS = r"(?:\d[ .-]?){3,}\d"
_CODE_WORD = (
    r"\b(?:code|codes|pin|pins|passcode|keycode|pincode|alarmcode|usercode|mastercode|geheimzahl|kennzahl)\b"
)
_SECRET_WORD = r"\b(?:password|passwords|passphrase|passwort|kennwort|codeword|code[ -]word)\b"  # noqa: S105 - words that are looked for
_PATTERNS = tuple(
    re.compile(pattern, re.IGNORECASE)
    for pattern in (
        _CODE_WORD + r"[^\d#]{0,24}" + _DIGITS,
        _DIGITS + r"[^\d#]{0,24}" + _CODE_WORD,
        _SECRET_WORD + r"\s*\W*\s*\w",
    )
)


def refuse_codes(line: str, *, where: str) -> None:
    """Refuse a line that looks as if it held a code, comments included.

    Parameters
    ----------
    line : str
        The whole line, its comment too.
    where : str
        File and line, for the message.

    Raises
    ------
    NotesError
        If it does; the message never repeats the line.
    """
    if any(pattern.search(line.replace("_", " ")) for pattern in _PATTERNS):
        raise NotesError(
            "this line looks as if it held a code or a password, and those are never stored: "
            "notes are a plan of the house, and whoever found both could walk in",
            where=where,
            cure="Take the code away, here and from the file; users set their own at the keypad",
        )
