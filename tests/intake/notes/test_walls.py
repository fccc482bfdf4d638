from __future__ import annotations

import pytest
import shapely

from wardwright.intake.notes.walls import Make, edges_of, facing, left_over, pieces_of
from wardwright.model.fabric import Space

INSIDE = Make(0.1, "block", is_party=False, is_guessed=False)
OUTSIDE = Make(0.3, "brick", is_party=False, is_guessed=False)


def room(identity: str, *box: float) -> Space:
    return Space(
        id=identity, name=identity, storey="g", outline_m=tuple(shapely.box(*box).exterior.coords[:-1])
    )


def test_edges_say_which_way_is_out() -> None:
    edges = {edge.side: edge for edge in edges_of(room("hall", 0, 0, 2, 4))}
    assert {side: edge.at for side, edge in edges.items()} == {"south": 0, "east": 2, "north": 4, "west": 0}
    assert (edges["east"].low, edges["east"].high, edges["east"].sign, edges["east"].is_level) == (
        0,
        4,
        1,
        False,
    )


@pytest.mark.parametrize(("gap", "count"), [(0.0, 1), (0.1, 1), (0.6, 1), (0.61, 0)])
def test_rooms_face_each_other_across_no_more_than_a_wall(gap: float, count: int) -> None:
    edges = edges_of(room("a", 0, 0, 2, 4)) + edges_of(room("b", 2 + gap, 1, 4, 9))
    found = facing(edges)
    assert len(found) == count
    if found:
        lower, upper, low, high = found[0]
        assert (lower.room, upper.room, low, high) == ("a", "b", 1, 4)


def test_pieces_are_the_wall_between_and_what_is_left() -> None:
    spaces = [room("a", 0, 0, 2, 4), room("b", 2.2, 1, 4, 4)]
    pieces = pieces_of(
        spaces, inside={}, inside_usual=INSIDE, outside={("a", "west"): OUTSIDE}, outside_usual=OUTSIDE
    )
    between = [piece for piece in pieces if piece.rooms[1] is not None]
    assert [(p.rooms, p.low, p.high, p.at) for p in between] == [(("a", "b"), 1, 4, pytest.approx(2.1))]
    assert between[0].make.thickness == pytest.approx(0.2)
    # Each side of each room is covered once: by the wall between or by an outside piece.
    for space in spaces:
        length = sum(p.high - p.low for p in pieces if space.id in p.rooms)
        assert length == pytest.approx(shapely.Polygon(space.outline_m).length)


def test_a_short_rest_between_two_walls_is_left_out_and_a_long_one_kept() -> None:
    edge = next(edge for edge in edges_of(room("a", 0, 0, 2, 4)) if edge.side == "east")
    outline = shapely.box(0, 0, 2, 4)
    assert left_over(edge, [(0, 1.9), (2.0, 4)], outline) == []
    assert left_over(edge, [(0, 1.0), (2.0, 4)], outline) == [(1.0, 2.0)]
    assert left_over(edge, [(0, 3.9)], outline) == [(3.9, 4.0)]
    assert left_over(edge, [], outline) == [(0.0, 4.0)]
