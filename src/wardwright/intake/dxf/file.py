"""A DXF file opened: its faces of walls, lines and swings of openings, and texts, in its own unit."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator
from typing import Any, BinaryIO, NamedTuple, TypeAlias

import ezdxf
import ezdxf.recover
import numpy as np
from numpy.typing import NDArray

from wardwright.errors import IntakeError
from wardwright.intake.dxf.texts import Text, text_of

FloatArray = NDArray[np.float64]
Entity: TypeAlias = Any
"""One entity of a DXF file: its attributes are those of its type, which only the file knows."""

MOST_ENTITIES = 150_000
"""A drawing with more, blocks taken apart, is refused. [-] (assumption)"""
HEAD_BYTES = 100_000
"""The first section of a drawing begins within this. [bytes] (assumption)"""
TAIL_BYTES = 200
"""How far before its end a file says that it ends. [bytes] (assumption)"""
DEEPEST = 8
"""Blocks within blocks are taken apart this deep. [-] (assumption)"""

_UNITS = {1: "inch", 2: "foot", 4: "mm", 5: "cm", 6: "m"}
_WALLS = re.compile(r"wall|wand|mauer|\bmurs?\b|w(ä|ae)nde", re.IGNORECASE)
_OPENINGS = re.compile(r"open|door|window|glaz|fenster|t(ü|ue)r|porte", re.IGNORECASE)
_NOT_BUILT = re.compile(
    r"stem|foot|found|slab|beam|head|dim|text|note|anno|tag|hatch|patt|fill|roof|retain|demo|schedule|title",
    re.IGNORECASE,
)


class Swing(NamedTuple):
    """The arc of a door's leaf."""

    centre: tuple[float, float]
    radius: float
    ends: tuple[tuple[float, float], tuple[float, float]]
    """Where the arc begins and ends."""


class Drawing(NamedTuple):
    """What a drawing holds of a plan, in its own unit."""

    form: str
    """The version of the format."""
    stated_unit: str | None
    """What the header says; None where it says nothing."""
    faces: FloatArray
    """Faces of walls, shape (n, 2, 2)."""
    leaves: FloatArray
    """Straight lines of the layers of openings, shape (m, 2, 2)."""
    swings: tuple[Swing, ...]
    texts: tuple[Text, ...]
    unread: tuple[tuple[str, int], ...]
    """Layers that nothing is read from, and how many entities each has."""


class Pieces(NamedTuple):
    """What is gathered while a drawing is gone through."""

    faces: list[tuple[tuple[float, float], tuple[float, float]]]
    leaves: list[tuple[tuple[float, float], tuple[float, float]]]
    swings: list[Swing]
    texts: list[Text]
    unread: Counter[str]


def opened(stream: BinaryIO, *, where: str) -> Drawing:
    """Read a DXF file.

    Parameters
    ----------
    stream : binary stream
        The file, from its beginning.
    where : str
        Its name, for messages.

    Returns
    -------
    Drawing
        What it holds of a plan.

    Raises
    ------
    IntakeError
        If it is no DXF file, or no layer of it is one of walls.
    """
    document = _document(stream, where)
    found = Pieces([], [], [], [], Counter())
    for count, (entity, layer) in enumerate(_entities(document.modelspace(), None, depth=0)):
        if count > MOST_ENTITIES:
            raise IntakeError(
                f"it holds more than {MOST_ENTITIES} entities, blocks taken apart",
                where=where,
                cure="Save the plan of one storey by itself",
            )
        _gather(found, entity, layer)
    if not found.faces:
        layers = ", ".join(sorted({layer_name(n) for n in found.unread})[:12]) or "none"
        raise IntakeError(
            f"no layer of it that holds lines is named for walls (it has: {layers})",
            where=where,
            cure="Put the walls' faces on a layer whose name holds WALL, doors and windows on one with OPENING",
        )
    return Drawing(
        form=f"DXF {document.dxfversion}",
        stated_unit=_UNITS.get(int(document.header.get("$INSUNITS", 0))),
        faces=np.array(found.faces, dtype=np.float64).reshape(-1, 2, 2),
        leaves=np.array(found.leaves, dtype=np.float64).reshape(-1, 2, 2),
        swings=tuple(found.swings),
        texts=tuple(found.texts),
        unread=tuple(sorted(found.unread.items())),
    )


def _document(stream: BinaryIO, where: str) -> Any:  # noqa: ANN401 - the library's document is untyped here
    content = stream.read()
    stream.seek(0)
    head = content[:HEAD_BYTES]
    if head[:2] == b"AC" and head[2:6].isdigit():
        raise IntakeError(
            "it is a drawing in its program's own form, not DXF",
            where=where,
            cure="Save it as DXF and give that",
        )
    if b"SECTION" not in head:
        raise IntakeError(
            "it is not a DXF file: no section begins in it", where=where, cure="Save the drawing as DXF"
        )
    if b"EOF" not in content[-TAIL_BYTES:]:
        raise IntakeError(
            "the file ends before its last line, EOF",
            where=where,
            cure="Fetch or save the drawing again: it was cut short",
        )
    try:
        document, _ = ezdxf.recover.read(stream)
    except Exception as error:  # the library raises several kinds of its own, and some of Python's
        said = str(error).splitlines()[0][:160] if str(error) else "no reason given"
        raise IntakeError(
            f"it cannot be read as DXF ({type(error).__name__}: {said})",
            where=where,
            cure="Save the drawing as DXF again; a damaged or cut-off file cannot be read",
        ) from error
    return document


def _entities(entities: Iterable[Entity], layer: str | None, *, depth: int) -> Iterator[tuple[Entity, str]]:
    """All entities with their layers, blocks and polylines taken apart; layer 0 in a block is the block's own."""
    for entity in entities:
        own = str(entity.dxf.get("layer", "0"))
        name = layer if layer is not None and own == "0" else own
        kind = entity.dxftype()
        if kind in ("LWPOLYLINE", "POLYLINE") or (kind == "INSERT" and depth < DEEPEST):
            yield from _entities(entity.virtual_entities(), name, depth=depth + 1)
        else:
            yield entity, name


def layer_name(layer: str) -> str:
    """A layer's own name, without that of the drawing it was bound in from.

    Examples
    --------
    >>> layer_name("xref-house$0$A-WALL")
    'A-WALL'
    """
    return re.split(r"\$\d+\$|\|", layer)[-1]


def is_of(layer: str, what: str) -> bool:
    """Whether a layer is one of walls, or of openings, by its name.

    Examples
    --------
    >>> is_of("A-WALL", "walls"), is_of("S-STEM-WALL", "walls"), is_of("A-DOOR", "openings")
    (True, False, True)
    """
    pattern = _WALLS if what == "walls" else _OPENINGS
    name = layer_name(layer)
    return pattern.search(name) is not None and _NOT_BUILT.search(name) is None


def _gather(found: Pieces, entity: Entity, layer: str) -> None:
    kind = entity.dxftype()
    if kind in ("TEXT", "MTEXT"):
        text = text_of(entity)
        if text is not None:
            found.texts.append(text)
    elif kind == "LINE" and is_of(layer, "walls"):
        found.faces.append(_ends(entity))
    elif kind == "LINE" and is_of(layer, "openings"):
        found.leaves.append(_ends(entity))
    elif kind == "ARC" and is_of(layer, "openings"):
        start, end = entity.start_point, entity.end_point
        centre = entity.dxf.center
        found.swings.append(
            Swing(
                (float(centre.x), float(centre.y)),
                float(entity.dxf.radius),
                ((float(start.x), float(start.y)), (float(end.x), float(end.y))),
            )
        )
    else:
        found.unread[layer] += 1


def _ends(line: Entity) -> tuple[tuple[float, float], tuple[float, float]]:
    start, end = line.dxf.start, line.dxf.end
    return (float(start.x), float(start.y)), (float(end.x), float(end.y))
