"""Seeded damage to whatever a user may hand in, by what the form is made of: values, keys, tokens and lines.

The same seed damages the same text in the same way, so that a fault can be looked at again.
"""

from __future__ import annotations

import copy
import json
import random
import re
from collections.abc import Callable, Sequence
from typing import Any

NUMBERS = (
    0, -1, 1, 0.5, -0.0, 1e-9, 1e-300, 5e-324, 2.4, 3, 24, 90, 180, 360, 999, 1e3, 1999.0, 1e6, 1e9, 2**31, 2**63,
    -(2**63) - 1, 1e22, 1e308, -1e308,
)  # fmt: skip
WORDS = (
    "", " ", "\t", "none", "unknown", "null", "nan", "inf", "ä", "\u202e", "\ud7ff", "'", '"', "`", "<b>", "${x}",
    "../../etc", "4711", "x" * 5000, "#1", "$", "*", "()", "[[", "1e999", "-", "é" * 40, "\\", "%s", "{0}",
)  # fmt: skip
BYTES = (b"\x00", b"\xff\xfe", b"\xef\xbb\xbf", b"\xc3", b"\r", b"\x1a", b"\x1b[2J", b"\xe2\x80\xae")
Path = tuple[int | str, ...]


def drawn(kind: str, seed: int) -> random.Random:
    """The draws of one input: the same for the same kind and seed, on every machine."""
    return random.Random(f"{kind}:{seed}")  # noqa: S311 - nothing secret: it must repeat


def several(draw: random.Random) -> int:
    """How many places are damaged: mostly one, sometimes up to five."""
    return draw.choice((1, 1, 1, 1, 2, 2, 3, 5))


def damaged_bytes(data: bytes, draw: random.Random) -> bytes:
    """Damage that knows nothing of the form: a file cut short, a flipped byte, a block twice or gone."""
    here, span = draw.randrange(len(data) + 1), draw.choice((1, 1, 3, 20, 200))
    ways = (
        data[:here],
        data[:here] + bytes([draw.randrange(256)]) + data[here + 1 :],
        data[:here] + data[here + span :],
        data[:here] + data[here : here + span] * draw.choice((2, 2, 50)) + data[here + span :],
        data[:here] + draw.choice(BYTES) + data[here:],
        data.replace(b"\n", draw.choice((b"\r\n", b"\r", b"", b"\n\n"))),
    )
    return draw.choice(ways)


# --- JSON -------------------------------------------------------------------------------------------------


def paths(value: Any, here: Path = ()) -> list[Path]:
    """Every place of a tree of lists and objects, the whole of it first."""
    inner: list[tuple[int | str, Any]] = []
    if isinstance(value, dict):
        inner = list(value.items())
    elif isinstance(value, list):
        inner = list(enumerate(value))
    return [here, *(path for key, part in inner for path in paths(part, (*here, key)))]


def value_at(data: Any, path: Path) -> Any:
    """What stands at a place."""
    for step in path:
        data = data[step]
    return data


def damaged_json(text: str, draw: random.Random) -> bytes:
    """A JSON document with some values, keys or entries changed."""
    data = json.loads(text)
    for _ in range(several(draw)):
        data = _damaged_tree(data, draw)
    written = json.dumps(data, indent=draw.choice((None, 1)), ensure_ascii=draw.random() < 0.9)
    encoded = written.encode("utf-8", "surrogatepass")
    return damaged_bytes(encoded, draw) if draw.random() < 0.1 else encoded


def _damaged_tree(data: Any, draw: random.Random) -> Any:
    all_paths = paths(data)
    # Deep places are many: draw the depth first, so that whole entries are hit as often as corners of outlines.
    depth = draw.choice(sorted({len(path) for path in all_paths}))
    path = draw.choice([path for path in all_paths if len(path) == depth])
    if not path:
        return draw.choice((data, [data], None, "", 0, {})) if draw.random() < 0.05 else data
    holder, key = value_at(data, path[:-1]), path[-1]
    if draw.random() < 0.4:
        _change_shape(holder, key, draw)
    else:
        like = [p for p in all_paths if p and p[-1] == key]
        holder[key] = _other_value(holder[key], draw, data, (draw.choice(all_paths), draw.choice(like)))
    return data


def _change_shape(holder: Any, key: Any, draw: random.Random) -> None:
    """An entry gone, twice, elsewhere or under another key."""
    if isinstance(holder, dict) and draw.random() < 0.5:
        holder[draw.choice((key + "s", key[:-1], key.upper(), draw.choice(WORDS)))] = holder.pop(key)
    elif draw.random() < 0.5:
        del holder[key]
    elif isinstance(holder, list):
        holder.insert(draw.randrange(len(holder) + 1), copy.deepcopy(holder[key]))
        draw.shuffle(holder)
    else:
        holder[key] = [holder[key]]


def _other_value(old: Any, draw: random.Random, data: Any, elsewhere: Sequence[Path]) -> Any:
    """A value of the same sort, of another, or one that stands elsewhere in the document."""
    if isinstance(old, list) and draw.random() < 0.2:
        return old[::-1]
    if isinstance(old, (int, float)) and not isinstance(old, bool) and draw.random() < 0.5:
        return _other_number(float(old), draw)
    odd = (*NUMBERS, *WORDS, None, True, False, [], {}, [[]], {"id": "x"})
    return draw.choice((draw.choice(odd), *(copy.deepcopy(value_at(data, path)) for path in elsewhere)))


def _other_number(old: float, draw: random.Random) -> float:
    changed = (
        -old,
        old * 1000,
        old / 1000,
        old + 0.01,
        old - 0.01,
        old + 1,
        old * 1.5,
        round(old),
        old + 1e-7,
    )
    return draw.choice(changed)


# --- text in lines: notes and sheets ------------------------------------------------------------------------

TOKEN = re.compile(r"\s+|\"[^\"]*\"|[\w.+-]+|.")


def damaged_lines(text: str, draw: random.Random, pool: Sequence[str]) -> bytes:
    """Lines of text with some lines or tokens changed; `pool` holds lines to take others from."""
    lines = text.splitlines()
    for _ in range(several(draw)):
        _damage_lines(lines, draw, pool)
    encoded = ("\n".join(lines) + "\n").encode("utf-8", "surrogatepass")
    return damaged_bytes(encoded, draw) if draw.random() < 0.1 else encoded


def _damage_lines(lines: list[str], draw: random.Random, pool: Sequence[str]) -> None:
    here = draw.randrange(len(lines) or 1)
    if not lines:
        lines.append("")
    match draw.randrange(9):
        case 0:
            del lines[here]
        case 1:
            lines.insert(draw.randrange(len(lines) + 1), lines[here])
        case 2:
            other = draw.randrange(len(lines))
            lines[here], lines[other] = lines[other], lines[here]
        case 3:
            lines.insert(here, draw.choice(pool))
        case 4:
            lines[here] += draw.choice((" ", ", ", "")) + draw.choice(pool)
        case _:
            lines[here] = damaged_tokens(lines[here], draw, draw.choice(pool))


def damaged_tokens(line: str, draw: random.Random, other: str) -> str:
    """One line with a token changed, gone, doubled or taken from another line."""
    tokens, others = TOKEN.findall(line), TOKEN.findall(other) or [""]
    if not tokens:
        return draw.choice(others)
    spots = [i for i, token in enumerate(tokens) if token.strip()] or [0]
    here = draw.choice(spots)
    match draw.randrange(7):
        case 0:
            del tokens[here]
        case 1:
            tokens.insert(here, tokens[here] + " ")
        case 2:
            tokens[here] = draw.choice(others)
        case 3:
            tokens[here] = draw.choice(WORDS)
        case 4:
            there = draw.choice(spots)
            tokens[here], tokens[there] = tokens[there], tokens[here]
        case _:
            numbers = [i for i in spots if re.fullmatch(r"[-+]?\d+(\.\d*)?", tokens[i])]
            if numbers:
                spot = draw.choice(numbers)
                nasty = draw.choice((_other_number(float(tokens[spot]), draw), draw.choice(NUMBERS)))
                tokens[spot] = f"{nasty:.6g}"
            else:
                tokens[here] = draw.choice((tokens[here][:-1], tokens[here] + "s", tokens[here].upper()))
    return "".join(tokens)


# --- IFC ----------------------------------------------------------------------------------------------------

ARGUMENT = re.compile(
    r"'(?:[^']|'')*'|#\d+|\.\w+\.|[-+]?\d+\.?\d*(?:E[-+]?\d+)?|\$|\*|[(),]|IFC\w+", re.ASCII
)
LINE = re.compile(r"^#\d+\s*=")
TYPICAL = (
    "$",
    "*",
    "()",
    "''",
    "#0",
    "#999999999",
    ".T.",
    ".UNKNOWN.",
    "0.",
    "-1.",
    "1.E300",
    "1.E-300",
    "(#1,#1)",
)


def damaged_ifc(data: bytes, draw: random.Random) -> bytes:
    """A building file with some lines or arguments changed; mostly lines of one class, so that rare ones are hit."""
    lines = data.decode("latin-1").splitlines()
    for _ in range(several(draw)):
        _damage_ifc(lines, draw)
    encoded = ("\n".join(lines) + "\n").encode("latin-1", "replace")
    return damaged_bytes(encoded, draw) if draw.random() < 0.1 else encoded


def _damage_ifc(lines: list[str], draw: random.Random) -> None:
    by_class: dict[str, list[int]] = {}
    for i, line in enumerate(lines):
        if LINE.match(line):
            by_class.setdefault(line.split("=", 1)[1].split("(", 1)[0].strip(), []).append(i)
    if not by_class or draw.random() < 0.05:
        here = draw.randrange(len(lines) or 1)  # the head, too, is made of lines
    else:
        here = draw.choice(by_class[draw.choice(sorted(by_class))])
    if here >= len(lines):
        return
    match draw.randrange(8):
        case 0:
            del lines[here]
        case 1:
            lines.insert(here, lines[here])
        case 2:
            lines[here] = lines[here].replace("IFC", "IFCX", 1)
        case 3 if by_class:
            kind = draw.choice(sorted(by_class))
            lines[here] = re.sub(r"IFC\w+", kind, lines[here], count=1)
        case _:
            lines[here] = _damaged_arguments(lines[here], draw, draw.choice(lines))


def _damaged_arguments(line: str, draw: random.Random, other: str) -> str:
    head, parted, rest = line.partition("(")
    found = [one for one in ARGUMENT.finditer(rest) if one[0] not in "(),"]
    if not parted or not found:
        return line
    spot = draw.choice(found)
    word, others = spot[0], [one for one in ARGUMENT.findall(other.partition("(")[2]) if one not in "(),"]
    changes: list[Callable[[], str]] = [
        lambda: draw.choice(TYPICAL),
        lambda: draw.choice(others or ["$"]),
        lambda: head.split("=")[0].strip() or "#1",  # itself
        lambda: "",
        lambda: f"{_other_number(float(word), draw)!r}".upper() if re.match(r"[-+\d]", word) else word * 2,
        lambda: f"#{draw.randrange(1, 400)}",
        lambda: f"'{draw.choice(WORDS)}'",
        lambda: f"({word})",
    ]
    return head + parted + rest[: spot.start()] + draw.choice(changes)() + rest[spot.end() :]


# --- DXF ----------------------------------------------------------------------------------------------------


def damaged_dxf(data: bytes, draw: random.Random) -> bytes:
    """A drawing with some of its pairs of code and value changed, or whole entities gone, twice or elsewhere."""
    lines = data.decode("latin-1").splitlines()
    pairs = [(lines[i], lines[i + 1]) for i in range(0, len(lines) - 1, 2)]
    begin = next((i for i, pair in enumerate(pairs) if pair[1] == "ENTITIES"), 0)
    for _ in range(several(draw)):
        # What is drawn is the smaller part of a file: look there more often than in its tables.
        low = begin if draw.random() < 0.7 else 0
        here = draw.randrange(min(low, len(pairs) - 1), len(pairs))
        _damage_pairs(pairs, here, draw)
    encoded = "\n".join(line for pair in pairs for line in pair).encode("latin-1", "replace") + b"\n"
    return damaged_bytes(encoded, draw) if draw.random() < 0.1 else encoded


def _damage_pairs(pairs: list[tuple[str, str]], here: int, draw: random.Random) -> None:
    code, value = pairs[here]
    starts = [i for i in range(here, -1, -1) if pairs[i][0].strip() == "0"]
    ends = [i for i in range(here + 1, len(pairs)) if pairs[i][0].strip() == "0"]
    first, end = (starts or [0])[0], (ends or [len(pairs)])[0]
    match draw.randrange(8):
        case 0:
            del pairs[here]
        case 1:
            del pairs[first:end]
        case 2:
            pairs[first:first] = pairs[first:end] * draw.choice((1, 1, 40))
        case 3:
            pairs[here] = draw.choice(pairs)
        case 4:
            pairs[here] = (draw.choice((" 0", " 10", " 70", " 999", "x", "")), value)
        case _:
            pairs[here] = (code, _other_figure(value, draw))


def _other_figure(value: str, draw: random.Random) -> str:
    try:
        number = float(value)
    except ValueError:
        return str(draw.choice((value + "S", value[:-1], *WORDS)))
    return repr(draw.choice((_other_number(number, draw), _other_number(number, draw), draw.choice(NUMBERS))))
