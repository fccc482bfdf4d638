from __future__ import annotations

import math

import pytest

from common.cottage import read
from wardwright.errors import NotesError
from wardwright.intake.notes.clauses import Clauses
from wardwright.intake.notes.draft import begin
from wardwright.intake.notes.faces import corner_of, distance_along, face_toward, faces, wall_behind, way
from wardwright.intake.notes.words import Line
from wardwright.model.fabric import Space
from wardwright.store.catalogue import load_catalogue

LINE = Line((), where="x")
# An L: 4 x 3 with its north-east 2 x 1 cut away.
ELL = Space(
    id="ell", name="ell", storey="g", outline_m=((0, 0), (4, 0), (4, 2), (2, 2), (2, 3), (0, 3)),
)  # fmt: skip


def turned(space: Space, degrees: float) -> Space:
    cos, sin = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
    ring = tuple((x * cos - y * sin, x * sin + y * cos) for x, y in space.outline_m)
    return space.model_copy(update={"outline_m": ring})


@pytest.mark.parametrize("ring", [ELL.outline_m, tuple(reversed(ELL.outline_m))])
def test_faces_look_out_whichever_way_the_ring_winds(ring: tuple[tuple[float, float], ...]) -> None:
    found = faces(ELL.model_copy(update={"outline_m": ring}))
    assert sum(face.length for face in found) == pytest.approx(14)
    total = [sum(face.out[i] * face.length for face in found) for i in (0, 1)]
    assert total == pytest.approx([0, 0])  # the outward normals of a closed ring cancel
    assert {face.out for face in found if face.start[0] == face.end[0] == 4} == {(1.0, 0.0)}


@pytest.mark.parametrize(
    ("side", "at"), [("south", (0, 0)), ("west", (0, 3)), ("east", (4, 0)), ("north", (2, 3))]
)
def test_the_longest_face_of_a_side_or_the_outermost(side: str, at: tuple[float, float]) -> None:
    # The two north faces are both 2 m long: the outer one is meant.
    assert face_toward(LINE, ELL, side).start == at


def test_sides_hold_for_a_house_that_stands_askew() -> None:
    face = face_toward(LINE, turned(ELL, 20), "south")
    assert face.length == pytest.approx(4)
    assert distance_along(LINE, face, Clauses(LINE, ends={"east": 1.0})) == pytest.approx(3)


def test_distances_are_from_the_named_end() -> None:
    east = face_toward(LINE, ELL, "east")  # runs from south to north
    west = face_toward(LINE, ELL, "west")  # runs from north to south
    assert distance_along(LINE, east, Clauses(LINE, ends={"south": 0.5})) == pytest.approx(0.5)
    assert distance_along(LINE, west, Clauses(LINE, ends={"south": 0.5})) == pytest.approx(2.5)
    assert distance_along(LINE, west, Clauses(LINE, ends={"north": 0.5}), half=0.6) == pytest.approx(1.1)
    assert distance_along(LINE, east, Clauses(LINE)) is None
    with pytest.raises(NotesError, match=r"beyond the end of that wall, which is 2\.00 m long"):
        distance_along(LINE, east, Clauses(LINE, ends={"south": 2.5}))
    with pytest.raises(NotesError, match="does not say where along the wall"):
        distance_along(LINE, east, Clauses(LINE, ends={"west": 0.5}))


@pytest.mark.parametrize(
    ("corner", "vertex", "out"),
    [
        ("north-west", (0, 3), (0, 1)),
        ("south-east", (4, 0), (0, -1)),
        ("south-west", (0, 0), (0, -1)),
    ],
)
def test_a_corner_is_on_the_face_that_is_named_first(
    corner: str, vertex: tuple[float, float], out: tuple[float, float]
) -> None:
    face, is_start = corner_of(ELL, corner)
    assert (face.start if is_start else face.end) == vertex
    assert face.out == pytest.approx(out)


def test_the_wall_behind_a_face_has_the_room_on_the_side_it_says() -> None:
    site = read()
    draft = begin(load_catalogue(), site)
    for side in ("north", "east", "south", "west"):
        face = face_toward(LINE, site.space("kitchen"), side)
        found = wall_behind(draft, "ground", face.point(face.length / 2), out=face.out)
        assert found is not None
        wall, offset, left = found
        (ax, ay), (bx, by) = wall.line_m
        length = math.dist((ax, ay), (bx, by))
        normal = (-(by - ay) / length * left, (bx - ax) / length * left)
        assert normal == pytest.approx((-face.out[0], -face.out[1]))
        assert 0 <= offset <= length
    assert wall_behind(draft, "ground", (50.0, 50.0), out=(1.0, 0.0)) is None


def test_ways_are_unit_vectors() -> None:
    assert way("north-east") == pytest.approx((math.sqrt(0.5), math.sqrt(0.5)))
    assert way("west") == (-1.0, 0.0)
