"""The texts of a drawing: sizes of openings and rooms, and names of rooms."""

from __future__ import annotations

import math
import re
from typing import Any, Literal, NamedTuple

FOOT_M, INCH_M = 0.3048, 0.0254
WIDE = 0.8
"""How wide a letter is, in its height. [-] (assumption)"""
DOOR_FROM_M = 1.95
"""A size at least this high is a door's, unless its letters say otherwise. [m] (assumption)"""
MOST_WORDS, MOST_LETTERS = 3, 24
"""A longer text is a note, no room's name. [-] (assumption)"""

SizeKind = Literal[
    "door", "sliding-door", "garage-door", "window", "fixed-window", "sliding-window", "hung-window"
]

_SIZE = re.compile(r"^(\d{4,5})(?:\s*[-,]?\s*([A-Za-z][A-Za-z. /-]*))?$")
_METRIC = re.compile(r"^(\d{3,4})\s*[xX\u00d7]\s*(\d{3,4})(?:\s+([A-Za-z][A-Za-z. /-]*))?$")
_FEET = r"(\d{1,2})'\s*-?\s*(?:(\d{1,2})(?:\"|'')?)?"
_ROOM = re.compile(rf"^{_FEET}\s*[xX\u00d7]\s*{_FEET}$")
_LETTERS: tuple[tuple[str, SizeKind], ...] = (
    (r"\bO\.?\s?H\b|OVERHEAD|GARAGE", "garage-door"),
    (r"S\.?\s?G\.?\s?D|SLIDING GLASS|PATIO|SLIDING DOOR", "sliding-door"),
    (r"\bO?XO\b|\bOX\b|SLIDER|\bSL\b", "sliding-window"),
    (r"\bSH\b|\bDH\b|HUNG", "hung-window"),
    (r"\bFX\b|FIX", "fixed-window"),
    (r"CSMT|CASEMENT|AWN|WINDOW", "window"),
    (r"DOOR", "door"),
)
_ROOM_WORD = re.compile(
    r"room|bed|bath|kitchen|living|dining|hall|entry|foyer|lobby|garage|carport|closet|\bclo\b|w\.?i\.?c\b|pantry"
    r"|utility|\butil\b|laundry|toilet|\btoil\b|\bwc\b|study|office|\bden\b|store|storage|landing|stair|attic|loft"
    r"|nursery|deck|porch|patio|balcon|terra[cs]|lounge|corridor|cellar|mud|workshop|master"
    r"|zimmer|k(ü|ue)che|\bbad\b|flur|diele|wohnen|schlafen|keller|abstell",
    re.IGNORECASE,
)
_OUTSIDE = re.compile(r"deck|porch|patio|balcon|terra[cs]|carport|veranda|garden", re.IGNORECASE)
_UNFINISHED = ("MASTER", "COVERED", "GREAT", "GUEST", "2 CAR", "WALK-IN")


class Text(NamedTuple):
    """Words on a drawing."""

    words: str
    place: tuple[float, float]
    """About its middle."""
    height: float
    turn: float
    """[rad]"""


class Size(NamedTuple):
    """The size of an opening as written: US codes say feet and inches, 2668 is 2 ft 6 in by 6 ft 8 in."""

    width_m: float
    height_m: float
    kind: SizeKind
    is_lettered: bool
    """Whether letters say the kind, and not the height alone."""


def text_of(entity: Any) -> Text | None:  # noqa: ANN401 - the library leaves its entities untyped
    """The words of a text entity and about where their middle is; None of an empty one."""
    words = " ".join(str(entity.plain_text()).split())
    if not words:
        return None
    turn = math.radians(float(entity.dxf.get("rotation", 0.0)))
    if entity.dxftype() == "MTEXT":
        height = float(entity.dxf.get("char_height", 1.0))
        place = entity.dxf.insert
        column, row = (
            (int(entity.dxf.get("attachment_point", 1)) - 1) % 3,
            (int(entity.dxf.get("attachment_point", 1)) - 1) // 3,
        )
    else:
        height = float(entity.dxf.get("height", 1.0))
        align, place, _ = entity.get_placement()
        column = {"LEFT": 0, "RIGHT": 2}.get(align.name.rpartition("_")[2], 1)
        row = 0 if align.name.startswith("TOP") else 1 if align.name.startswith("MIDDLE") else 2
    along = (1 - column) * WIDE * height * len(words) / 2
    up = (row - 1) * height / 2
    cos, sin = math.cos(turn), math.sin(turn)
    return Text(
        words,
        (float(place.x + along * cos - up * sin), float(place.y + along * sin + up * cos)),
        height,
        turn,
    )


def size_in(words: str) -> Size | None:
    """The size of an opening that a text says; None where it says none.

    Examples
    --------
    >>> door = size_in("2668")
    >>> round(door.width_m, 3), round(door.height_m, 3), door.kind
    (0.762, 2.032, 'door')
    >>> size_in("16070 O.H. DOOR").kind, size_in("5050 XO").kind, size_in("1660").kind
    ('garage-door', 'sliding-window', 'window')
    """
    metric = _METRIC.match(words)
    if metric is not None:
        return _sized(int(metric[1]) / 1000, int(metric[2]) / 1000, metric[3])
    code = _SIZE.match(words)
    if code is None:
        return None
    digits = code[1]
    if len(digits) == 4:
        feet = (digits[0], digits[1], digits[2], digits[3])
    elif int(digits[:2]) <= 20:
        feet = (digits[:2], digits[2], digits[3], digits[4])
    else:
        feet = (digits[0], digits[1], digits[2], digits[3:])
    across, up = (int(feet[i]) * FOOT_M + int(feet[i + 1]) * INCH_M for i in (0, 2))
    return _sized(across, up, code[2]) if across > 0.2 and up > 0.2 else None


def _sized(across: float, up: float, letters: str | None) -> Size | None:
    kind = next(
        (kind for pattern, kind in _LETTERS if re.search(pattern, letters or "", re.IGNORECASE)), None
    )
    if kind is None and letters is not None and letters.strip():
        return None  # a number with other words is no size
    usual: SizeKind = "door" if up >= DOOR_FROM_M else "window"
    return Size(across, up, kind or usual, kind is not None)


def room_size_in(words: str) -> tuple[float, float] | None:
    """The two sides of a room that a text says. [m]

    Examples
    --------
    >>> [round(side, 3) for side in room_size_in("13'8 x 14'")]
    [4.166, 4.267]
    """
    found = _ROOM.match(words)
    if found is None:
        return None
    one, other = (int(found[i]) * FOOT_M + int(found[i + 1] or 0) * INCH_M for i in (1, 3))
    return one, other


def is_outside(name: str) -> bool:
    """Whether a room's name says that it is in the open."""
    return _OUTSIDE.search(name) is not None


def names_in(texts: tuple[Text, ...]) -> list[Text]:
    """The texts that name a room, two that stand one above the other joined."""
    short = [
        t for t in texts if size_in(t.words) is None and room_size_in(t.words) is None and _is_short(t.words)
    ]
    joined: list[Text] = []
    taken: set[int] = set()
    for i, upper in enumerate(short):
        if upper.words.upper() not in _UNFINISHED:
            continue
        below = [
            j for j, other in enumerate(short)
            if j not in taken and j != i and _ROOM_WORD.search(other.words) and _is_right_below(upper, other)
        ]  # fmt: skip
        if below:
            lower = short[below[0]]
            taken |= {i, below[0]}
            place = ((upper.place[0] + lower.place[0]) / 2, (upper.place[1] + lower.place[1]) / 2)
            joined.append(Text(f"{upper.words} {lower.words}", place, lower.height, lower.turn))
    single = [t for i, t in enumerate(short) if i not in taken and _ROOM_WORD.search(t.words)]
    return joined + single


def _is_short(words: str) -> bool:
    return (
        len(words) <= MOST_LETTERS
        and len(words.split()) <= MOST_WORDS
        and re.fullmatch(r"[\w. /&'-]+", words) is not None
        and re.search(r"[^\W\d_]{2}", words.replace(".", "")) is not None
    )


def _is_right_below(upper: Text, lower: Text) -> bool:
    dx, dy = upper.place[0] - lower.place[0], upper.place[1] - lower.place[1]
    cos, sin = math.cos(lower.turn), math.sin(lower.turn)
    aside, above = dx * cos + dy * sin, -dx * sin + dy * cos
    return 0.0 < above < 2.5 * upper.height and abs(aside) < 4.0 * upper.height
