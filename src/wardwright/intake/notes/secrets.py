"""Lines of notes that hold a code: refused, so that none is ever stored or printed."""

from __future__ import annotations

import re

from wardwright.errors import NotesError
from wardwright.model.wording import holds_secret, masked

_DIGITS = r"(?:\d[ .-]?){3,}\d"
_CODE_WORD = (
    r"\b(?:code|codes|pin|pins|passcode|keycode|pincode|alarmcode|usercode|mastercode|geheimzahl|kennzahl)\b"
)
_SECRET_WORD = r"\b(?:password|passwords|passphrase|passwort|kennwort|codeword|code[ -]word)\b"  # noqa: S105 - words that are looked for
_CODE_GIVEN = re.compile(_CODE_WORD + r"[^\d#\n]{0,24}" + _DIGITS, re.IGNORECASE)
_WORD_GIVEN = re.compile(_SECRET_WORD + r"\s*\W*\s*\w+", re.IGNORECASE)
_PATTERNS = (
    _CODE_GIVEN,
    re.compile(_DIGITS + r"[^\d#\n]{0,24}" + _CODE_WORD, re.IGNORECASE),
    _WORD_GIVEN,
)


def holds_code(line: str) -> bool:
    """Whether a line looks as if it held a code or a password.

    Examples
    --------
    >>> holds_code("keypad by the door, code 4711"), holds_code("hall, 2.40 m high")
    (True, False)
    """
    return holds_secret(line) or any(pattern.search(line.replace("_", " ")) for pattern in _PATTERNS)


def starred_out(line: str) -> str:
    """A line of somebody else's text, such as a log's, with what looks like a code or a password starred out.

    Digits that only stand before such a word stay: in a log they are most often the time.

    Examples
    --------
    >>> starred_out("07:42 user code 4711 entered")
    '07:42 user code **** entered'
    >>> starred_out("password: rosebud, then set")
    'password: *******, then set'
    """
    found = list(masked(line))
    plain = line.replace("_", " ")
    for given in _CODE_GIVEN.finditer(plain):
        for place in range(given.start(), given.end()):
            found[place] = "*" if found[place].isdigit() else found[place]
    for given in _WORD_GIVEN.finditer(plain):
        begin = given.end() - len(re.split(r"\W", given[0])[-1])
        found[begin : given.end()] = "*" * (given.end() - begin)
    return "".join(found)


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
