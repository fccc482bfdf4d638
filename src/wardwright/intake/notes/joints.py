"""Pieces of wall put together: what is in one line is one wall, and corners are filled."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

import shapely

from wardwright.intake.notes.walls import Piece, Stretch
from wardwright.model.fabric import Space, Wall

BRIDGED_M = 0.6
"""Two walls in one line with no more than this between them are one wall. [m] (assumption)"""
FACE_M = 0.02
"""How deep behind a room's edge wall must stand for the room to count as closed there. [m] (assumption)"""


def joined(pieces: Sequence[Piece], rooms: shapely.Geometry) -> list[list[Piece]]:
    """Pieces put together that are one wall: one line, one make, and no room between."""
    groups: list[list[Piece]] = []
    for piece in sorted(pieces, key=lambda p: (p.is_level, round(p.at, 4), p.low, p.rooms[0])):
        for group in groups:
            last = group[-1]
            is_same = (
                last.is_level == piece.is_level
                and abs(last.at - piece.at) < 1e-4
                and last.make == piece.make
                and piece.low - last.high <= BRIDGED_M
            )
            if is_same and _is_free(replace(last, low=last.high, high=max(piece.low, last.high)), rooms):
                group.append(piece)
                break
        else:
            groups.append([piece])
    return groups


def _is_free(piece: Piece, rooms: shapely.Geometry) -> bool:
    return piece.high - piece.low < 1e-6 or piece.box().intersection(rooms).area < 1e-5


def walls_of(
    storey: str, pieces: Sequence[Piece], spaces: Sequence[Space], *, taken: Iterable[str] = ()
) -> tuple[list[Wall], list[Stretch]]:
    """The walls of a storey, joined up and drawn out to fill the corners, and which stretch of each bounds what.

    Parameters
    ----------
    storey : str
        Its id.
    pieces : sequence of Piece
        From `pieces_of`.
    spaces : sequence of Space
        Its rooms.
    taken : iterable of str
        Ids that walls have already.

    Returns
    -------
    walls : list of Wall
    stretches : list of Stretch
        One for each piece and each room that it bounds.
    """
    rooms = shapely.union_all([shapely.Polygon(space.outline_m) for space in spaces])
    groups = _without_stubs(joined(pieces, rooms), rooms)
    whole = _all_trimmed(_all_drawn_out(groups, rooms))
    walls: list[Wall] = []
    stretches: list[Stretch] = []
    ids = set(taken)
    for piece, group in zip(whole, groups, strict=True):
        wall = _record(storey, piece, ids)
        ids.add(wall.id)
        walls.append(wall)
        for part in group:
            stretches.extend(_stretches(part, wall.id))
    return walls, stretches


def _all_trimmed(pieces: Sequence[Piece]) -> list[Piece]:
    """Each piece trimmed in turn, so that of two that stand in each other only one gives way."""
    whole = list(pieces)
    for index in range(len(whole)):
        whole[index] = _trimmed(whole[index], [other for place, other in enumerate(whole) if place != index])
    return whole


def _all_drawn_out(groups: Sequence[Sequence[Piece]], rooms: shapely.Geometry) -> list[Piece]:
    """Each group as one piece, level ones drawn out first, so that one of two fills a corner."""
    whole = [replace(group[0], high=max(piece.high for piece in group)) for group in groups]
    for index in sorted(range(len(whole)), key=lambda i: not whole[i].is_level):
        others = [piece for place, piece in enumerate(whole) if place != index]
        whole[index] = _drawn_out(whole[index], others, rooms)
    return whole


def _without_stubs(groups: Sequence[list[Piece]], rooms: shapely.Geometry) -> list[list[Piece]]:
    """Outside pieces shorter than they are thick left out, where other walls close the room without them."""
    kept = list(groups)
    for group in groups:
        piece = group[0]
        if len(group) > 1 or piece.rooms[1] is not None or piece.high - piece.low >= piece.make.thickness:
            continue
        rest = [other for other in kept if other is not group]
        built = shapely.union_all([other.box() for other in _all_drawn_out(rest, rooms)])
        rim = rooms.buffer(FACE_M, join_style="mitre").difference(rooms)
        face = piece.box(before=FACE_M, after=FACE_M).intersection(rim)
        if face.difference(built).area < 1e-6:
            kept = rest
    return kept


def _trimmed(piece: Piece, others: Sequence[Piece]) -> Piece:
    """A wall cut back at an end that stands inside another across its whole thickness."""
    half = piece.make.thickness / 2
    for other in others:
        near, far = other.at - other.make.thickness / 2, other.at + other.make.thickness / 2
        crosses = other.is_level != piece.is_level and other.low < piece.at - half + 1e-6
        if not crosses or other.high < piece.at + half - 1e-6:
            continue
        if near <= piece.low + 1e-6 and piece.low < far - 1e-6 < piece.high:
            piece = replace(piece, low=far)
        if far >= piece.high - 1e-6 and piece.low < near + 1e-6 < piece.high:
            piece = replace(piece, high=near)
    return piece


def _drawn_out(piece: Piece, others: Sequence[Piece], rooms: shapely.Geometry) -> Piece:
    """A wall drawn out at each end as far as the corner there is open."""
    built = shapely.union_all([other.box() for other in others]) if others else shapely.Polygon()
    before, after = 0.0, 0.0
    for is_low in (True, False):
        end = replace(piece, high=piece.low) if is_low else replace(piece, low=piece.high)
        reach = 0.0
        for other in others:
            if other.is_level != piece.is_level and other.box().distance(end.box()) < 1e-4:
                far = other.at - other.make.thickness / 2 if is_low else other.at + other.make.thickness / 2
                reach = max(reach, (piece.low - far) if is_low else (far - piece.high))
        reach = min(reach, _free_reach(end, rooms, reach=reach, is_low=is_low))
        strip = end.box(before=reach if is_low else 0.0, after=0.0 if is_low else reach)
        if reach > 1e-4 and strip.difference(built).area > 1e-5:
            before, after = (reach, after) if is_low else (before, reach)
    return replace(piece, low=piece.low - before, high=piece.high + after)


def _free_reach(end: Piece, rooms: shapely.Geometry, *, reach: float, is_low: bool) -> float:
    """How far a wall may be drawn out at an end before it comes into a room. [m]"""
    strip = end.box(before=reach if is_low else 0.0, after=0.0 if is_low else reach)
    met = strip.buffer(-1e-6, join_style="mitre").intersection(
        rooms
    )  # rooms that it only touches do not count
    if met.area < 1e-6:
        return reach
    low_x, low_y, high_x, high_y = met.bounds
    low, high = (low_x, high_x) if end.is_level else (low_y, high_y)
    return float(end.low - high if is_low else low - end.high)


def _record(storey: str, piece: Piece, taken: set[str]) -> Wall:
    room, other = piece.rooms
    stem = f"{room}-{other}-wall" if other else f"{room}-{piece.side}-wall"
    number = next(n for n in range(1, len(taken) + 2) if (stem if n == 1 else f"{stem}-{n}") not in taken)
    fields: dict[str, object] = {
        "id": stem if number == 1 else f"{stem}-{number}",
        "storey": storey,
        "line_m": piece.line(piece.low, piece.high),
        "thickness_m": piece.make.thickness,
        "construction": piece.make.construction,
        "is_exterior": other is None and not piece.make.is_party,
    }
    if piece.make.is_guessed:
        fields["basis"] = (("construction", "guessed"), ("thickness_m", "guessed"))
    return Wall.model_validate(fields)


_BACK = {"north": "south", "south": "north", "east": "west", "west": "east"}


def _stretches(piece: Piece, wall: str) -> list[Stretch]:
    line = piece.line(piece.low, piece.high)
    room, other = piece.rooms
    found = [Stretch(room, other, piece.side, wall, line)]
    if other is not None:
        found.append(Stretch(other, room, _BACK[piece.side], wall, line))
    return found
