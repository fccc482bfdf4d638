from typing import Any

import pytest

from common.broken import found, only

RING = [[3.1, 0], [6, 0], [6, 4], [3.1, 4]]
CLEAR = (("devices", []), ("zones", []), ("openings", []))


def slope(*corners: list[float]) -> tuple[str, Any]:
    return ("storeys/first/slopes", [{"corners_m": list(corners)}])


def test_a_flat_slope_is_fine_a_bent_or_upright_one_is_not() -> None:
    assert found(slope([0, 0, 1], [6, 0, 1], [6, 4, 2.4], [0, 4, 2.4])) == ()
    assert only(slope([0, 0, 1], [6, 0, 1], [6, 4, 2.4], [0, 4, 1])) == (
        "stops",
        "first",
        "the corners of slopes[0] lie up to 0.35 m off one plane",
    )
    assert only(slope([0, 0, 0], [6, 0, 0], [6, 0, 2]))[2] == "slopes[0] covers no floor"


def test_a_house_has_a_storey() -> None:
    assert "there is no storey" in [p.what for p in found(("storeys", []))]


def test_a_space_of_no_area() -> None:
    tiny = [[0.5, 0.5], [0.6, 0.5], [0.6, 0.6], [0.5, 0.6]]
    assert only(("spaces/landing/outline_m", tiny), ("stairs", []), ("targets", []))[2] == (
        "its outline holds only 0.01 m2"
    )


@pytest.mark.parametrize(
    ("west_m", "weight"),
    [(3.0, None), (2.99, "noted"), (2.9, "stops")],
    ids=["touching", "a hair", "too far"],
)
def test_spaces_that_overlap(west_m: float, weight: str | None) -> None:
    ring = [[west_m, 0], [6, 0], [6, 4], [west_m, 4]]
    problems = found(("spaces/kitchen/outline_m", ring), *CLEAR)
    assert [p.weight for p in problems] == ([] if weight is None else [weight])


def test_a_named_part_of_a_room_may_lie_in_it_but_not_the_room_again() -> None:
    part = {
        "id": "larder",
        "name": "larder",
        "storey": "ground",
        "outline_m": [[5, 0], [6, 0], [6, 1], [5, 1]],
    }
    assert found(("spaces/+", part)) == ()
    assert only(("spaces/+", part | {"outline_m": RING}))[2] == "it overlaps the space 'kitchen' by 11.60 m2"
    assert found(("spaces/+", part | {"outline_m": RING, "storey": "first"}))[:1] == ()


def test_a_house_with_nothing_of_ours_is_noted() -> None:
    ours = [(f"spaces/{name}/belongs", "shared") for name in ("hall", "kitchen", "landing")]
    problems = found(*ours, ("people", []), ("targets", []), ("openings/front-door/is_entry_door", False))
    assert [(p.what, p.weight) for p in problems] == [("no space is ours", "noted")]


@pytest.mark.parametrize(
    ("ring", "what"),
    [
        ([[0, 0], [1, 1]], "'footprint_m' has fewer than 3 corners"),
        ([[0, -0.2], [6, 0], [6, -0.2], [0, 0]], "'footprint_m' crosses itself or holds no area"),
        ([[0, -2], [6, -2], [6, -1.8], [0, -1.8]], "'footprint_m' lies beside the wall's own line"),
    ],
)
def test_a_footprint_that_is_none(ring: object, what: str) -> None:
    assert only(("walls/south/footprint_m", ring))[2] == what


def test_a_wall_upon_a_wall_is_noted() -> None:
    wall = {"id": "again", "storey": "ground", "line_m": [[3.05, 0], [3.05, 3.8]]}
    assert only(("walls/+", wall)) == ("noted", "again", "it stands where the wall 'middle' stands")
    assert found(("walls/+", wall | {"base_m": 2.0})) == ()


@pytest.mark.parametrize(
    ("spaces", "line", "what"),
    [
        (["hall", "kitchen"], [[3, 1], [3, 1]], "the open edge has no length"),
        (["hall", "hall"], [[3, 1], [3, 2]], "it joins a space to itself"),
        (["hall", "landing"], [[3, 1], [3, 2]], "its spaces are on different storeys"),
        (["hall", "kitchen"], [[0, 5], [3, 5]], "its line lies 1.00 m from one of its spaces"),
        (["hall", "kitchen"], [[3.05, 1], [3.05, 2]], None),
    ],
)
def test_open_edges(spaces: list[str], line: object, what: str | None) -> None:
    edge = {"id": "edge", "spaces": spaces, "line_m": line}
    assert [p.what for p in found(("open_edges/+", edge))] == ([] if what is None else [what])


def test_a_stair_too_short_or_with_no_well() -> None:
    assert (
        only(("stairs/stairs/line_m", [[0.5, 0.8], [0.5, 0.9]]))[2]
        == "its walking line is shorter than 0.3 m"
    )
    assert only(("stairs/stairs/well_m", [[0, 0], [1, 1]]))[2] == "'well_m' is no outline"


def test_a_stair_to_a_storey_that_nobody_has_drawn_is_noted() -> None:
    problems = found(
        ("spaces/landing/storey", "ground"),
        ("spaces/landing/outline_m", [[10, 0], [12, 0], [12, 2], [10, 2]]),
        ("targets", []),
    )
    assert [(p.weight, p.what) for p in problems] == [
        ("noted", "its head leads nowhere: the storey 'first' has no space")
    ]


def test_a_stair_whose_foot_is_nowhere() -> None:
    assert only(("stairs/stairs/line_m", [[-3, 0.8], [0.5, 3.6]]))[2] == (
        "its foot leads nowhere: the nearest space of 'ground', 'hall', is 3.0 m away"
    )
