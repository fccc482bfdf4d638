from __future__ import annotations

import shapely
from hypothesis import given
from hypothesis import strategies as st

from common.cottage import read
from wardwright.errors import NotesError
from wardwright.model.placement import wall_footprint
from wardwright.model.site import Site

OFFSETS = st.floats(-0.6, 2.0).map(lambda v: round(v, 2))
SIZES = st.floats(1.0, 4.0).map(lambda v: round(v, 2))
SIDES = st.sampled_from(["north", "east", "south", "west"])


def assert_closed(site: Site) -> None:
    """Every room's edge has wall behind it, and no wall stands in a room."""
    for storey in site.storeys:
        assert_storey_closed(site, storey.id)


def assert_storey_closed(site: Site, storey: str) -> None:
    walls = shapely.union_all([shapely.Polygon(wall_footprint(w)) for w in site.walls if w.storey == storey])
    rooms = [shapely.Polygon(space.outline_m) for space in site.spaces if space.storey == storey]
    open_edges = shapely.union_all([shapely.LineString(edge.line_m).buffer(0.03) for edge in site.open_edges])
    for room in rooms:
        rim = room.buffer(0.02, join_style="mitre").difference(shapely.union_all(rooms))
        assert rim.difference(walls).difference(open_edges).area < 1e-6
        assert walls.intersection(room).area < 1e-6


@given(
    sides=st.lists(SIDES, min_size=1, max_size=4),
    sizes=st.lists(st.tuples(SIZES, SIZES), min_size=5, max_size=5),
    offsets=st.lists(OFFSETS, min_size=4, max_size=4),
    thickness=st.sampled_from([0.08, 0.1, 0.215]),
)
def test_any_rooms_put_against_one_another_are_closed(
    sides: list[str], sizes: list[tuple[float, float]], offsets: list[float], thickness: float
) -> None:
    lines = [f"walls inside {thickness} block", "storey g 2.4 high", f"r0 {sizes[0][0]} x {sizes[0][1]}"]
    for number, (side, offset) in enumerate(zip(sides, offsets, strict=False), start=1):
        end = "south" if side in ("east", "west") else "west"
        width, depth = sizes[number]
        lines.append(f"r{number} {width} x {depth} against r{number - 1} {side}, {offset} from its {end} end")
    try:
        site = read(house="\n".join(lines) + "\n")
    except NotesError as refused:
        assert "lie over" in refused.what or "touch" in refused.what  # noqa: PT017 - only these may be
        return
    assert_closed(site)


def test_the_cottage_is_closed_and_its_joined_rooms_too() -> None:
    assert_closed(read())
    assert_closed(
        read(
            "storey up\nden 2 x 2 at 0, 0\nnook 1 x 2 against den east, open\nbox 1 x 1 inside den corner north-west"
        )
    )


def test_walls_in_one_line_are_one_wall() -> None:
    site = read("a 2 x 2 at 20, 0\nb 2 x 2 against a east\nc 4.1 x 2 against a north")
    of = {name: [w.id for w in site.walls if name in w.id.split("-")] for name in "abc"}
    south = [w for w in site.walls if w.line_m[0][1] == w.line_m[1][1] == -0.15 and w.line_m[0][0] > 15]
    assert len(south) == 1
    assert of["c"]
    middle = [w for w in site.walls if w.line_m[0][1] == w.line_m[1][1] == 2.05]
    assert [w.line_m for w in middle] == [((20.0, 2.05), (24.1, 2.05))]
