"""A line of notes cut into words, names in quotes, and quantities in metres, feet, seconds, kilograms."""

from __future__ import annotations

import re
from typing import Literal, NamedTuple

from wardwright.errors import NotesError
from wardwright.model.wording import short

LONGEST_PIECE = 120
"""A word or name longer than this is a slip. [letters] (assumption)"""
METRES_PER_INCH = 0.0254
"""Exact by definition. [m]"""
KILOGRAMS_PER_POUND = 0.45359237
"""Exact by definition. [kg]"""

_INCHES = r"(?P<{0}>\d+(?:\.\d+)?)(?:\s+(?P<{0}_top>\d+)/(?P<{0}_bottom>[1-9]\d*))?"
_QUANTITY = re.compile(
    r"(?P<feet>\d+(?:\.\d+)?)\s*(?:'|(?:ft|feet|foot)\b)"
    r"(?:\s*" + _INCHES.format("inches") + r"\s*(?:\"|(?:inches|inch|in)\b))?"
    r"|" + _INCHES.format("only") + r"(?:\"|\s*(?:inches|inch|in)\b)"
    r"|(?P<top>\d+)/(?P<bottom>[1-9]\d*)(?:\"|\s*(?:inches|inch|in)\b)"
    r"|(?P<number>[-+]?\d+(?:\.\d+)?)(?:\s*(?P<unit>mm|cm|m|s|min|dBm|d|kg|lb|deg|C)\b)?"
)
_TIMES = re.compile(r"x(?=\s*\d)")
_WORD = re.compile(r"[^\W\d_][\w.-]*")
_TEXT = re.compile(r'"([^"]*)"')
_DECIMAL_COMMA = re.compile(r"\d,\d")
_FACTORS = {
    "mm": (0.001, "m"),
    "cm": (0.01, "m"),
    "m": (1.0, "m"),
    "s": (1.0, "s"),
    "min": (60.0, "s"),
    "d": (1.0, "d"),
    "dBm": (1.0, "dBm"),
    "kg": (1.0, "kg"),
    "lb": (KILOGRAMS_PER_POUND, "kg"),
    "deg": (1.0, "deg"),
    "C": (1.0, "C"),
}


class Token(NamedTuple):
    """One piece of a line: what it is, as it was written, and for a quantity its value and SI unit."""

    kind: Literal["word", "text", "quantity"]
    written: str
    value: float = 0.0
    unit: str | None = None


def without_comment(line: str) -> str:
    """Cut off what follows a ``#`` that does not stand in quotes.

    Examples
    --------
    >>> without_comment('zone 1 "Flat #2 hall" hall-detector  # the old one').strip()
    'zone 1 "Flat #2 hall" hall-detector'
    """
    quoted = False
    for place, letter in enumerate(line):
        after_digit = place > 0 and line[place - 1].isdigit()
        if letter == '"' and (quoted or not after_digit):  # after a digit it is the sign for inches
            quoted = not quoted
        if letter == "#" and not quoted:
            return line[:place]
    return line


def _quantity(match: re.Match[str]) -> Token:
    part = match.groupdict()

    def inches(key: str) -> float:
        if part[key] is None:
            return 0.0
        top, bottom = part[key + "_top"], part[key + "_bottom"]
        return float(part[key]) + (float(top) / float(bottom) if top else 0.0)

    if part["feet"] is not None:
        value = (12.0 * float(part["feet"]) + inches("inches")) * METRES_PER_INCH
        return Token("quantity", match[0], round(value, 6), "m")
    if part["only"] is not None:
        return Token("quantity", match[0], round(inches("only") * METRES_PER_INCH, 6), "m")
    if part["top"] is not None:
        return Token(
            "quantity", match[0], round(float(part["top"]) / float(part["bottom"]) * METRES_PER_INCH, 6), "m"
        )
    factor, unit = _FACTORS.get(part["unit"] or "", (1.0, None))
    return Token("quantity", match[0], round(float(part["number"]) * factor, 9), unit)


def cut(line: str, *, where: str) -> tuple[Token, ...]:
    r"""Cut a line, its comment already off, into its pieces; commas only part them.

    Parameters
    ----------
    line : str
        The line.
    where : str
        File and line, for the message.

    Returns
    -------
    tuple of Token
        The pieces; every length is in metres.

    Raises
    ------
    NotesError
        Where a piece is neither a word, a quantity, nor a text in quotes.

    Examples
    --------
    >>> [token.value for token in cut("10'6\" x 320 cm", where="x") if token.kind == "quantity"]
    [3.2004, 3.2]
    """
    if _DECIMAL_COMMA.search(_TEXT.sub("", line)):
        raise NotesError(
            "a comma between two digits could be a decimal comma",
            where=where,
            cure="Write 3.2 for the number, or put a space after the comma",
        )
    tokens: list[Token] = []
    place = 0
    while place < len(line):
        letter = line[place]
        if letter.isspace() or letter in ",;":
            place += 1
            continue
        patterns = (_QUANTITY, _TIMES, _WORD, _TEXT)
        match = next((found for pattern in patterns if (found := pattern.match(line, place))), None)
        if match is None or (match.re is _QUANTITY and _runs_on(line, match.end())):
            piece = line[place:].split(maxsplit=1)[0].rstrip(",")
            raise NotesError(
                f"'{short(piece) or ascii(piece)[1:-1]}' cannot be read",
                where=where,
                cure="Write lengths as 3.2, 320 cm, 10'6\" or 10 ft 6 in, names in kebab-case starting with a "
                'letter, and other names in quotes, such as "Bathroom 1"',
            )
        if len(match[0]) > LONGEST_PIECE:
            raise NotesError(
                f"'{short(match[0])}' is {len(match[0])} letters long",
                where=where,
                cure=f"Write a word or name of at most {LONGEST_PIECE} letters",
            )
        if match.re is _QUANTITY:
            tokens.append(_quantity(match))
        elif match.re is _TEXT:
            tokens.append(Token("text", match[1]))
        else:
            tokens.append(Token("word", match[0]))
        place = match.end()
    return tuple(tokens)


def _runs_on(line: str, place: int) -> bool:
    rest = line[place : place + 2]
    return bool(rest) and not (rest[0].isspace() or rest[0] in ",;x" or not rest.strip("'\""))
