from __future__ import annotations

import pytest
import shapely

from common.cottage import read
from wardwright.errors import NotesError
from wardwright.intake.notes.furniture import OFF_WALL_M, USUAL_BOXES
from wardwright.model.placement import fixture_outline


def box(line: str) -> tuple[float, ...]:
    (fixture,) = read(line).fixtures
    return tuple(round(v, 4) for v in shapely.Polygon(fixture_outline(fixture)).bounds)


@pytest.mark.parametrize(
    ("line", "bounds"),
    [
        # The hall is 0 to 1.8 by 0 to 4.6.
        ("radiator hall east 1.0 x 0.1 x 0.6, 0.4 from south", (1.67, 0.4, 1.77, 1.4)),
        ("radiator hall west 1.0 x 0.1 x 0.6, 0.4 from north", (0.03, 3.2, 0.13, 4.2)),
        ("radiator hall south 0.8 x 0.1", (0.5, 0.03, 1.3, 0.13)),
        ("cupboard hall corner north-east 0.5 x 0.4 x 2", (1.27, 4.17, 1.77, 4.57)),
        ("table hall 0.6 x 0.8, 0.9 from west, 2.0 from south", (0.6, 1.6, 1.2, 2.4)),
        ("table hall 0.6 x 0.8", (0.6, 1.9, 1.2, 2.7)),
    ],
)
def test_furniture_stands_where_the_line_says(line: str, bounds: tuple[float, ...]) -> None:
    assert box(line) == bounds


@pytest.mark.parametrize("kind", sorted(USUAL_BOXES))
def test_every_kind_has_a_usual_box_and_says_that_it_is_a_guess(kind: str) -> None:
    (fixture,) = read(f"{kind} kitchen east").fixtures
    assert fixture.kind == kind
    assert (fixture.size_m, fixture.height_m) == (USUAL_BOXES[kind][:2], USUAL_BOXES[kind].height)
    for field in ("size_m", "height_m", "base_m", "heat", "centre_m"):
        assert fixture.basis_of(field) == "guessed"


def test_what_is_said_is_told() -> None:
    (fixture,) = read("boiler kitchen west 0.4 x 0.3 x 0.7, base 1.2, heat hot, 0.2 from north").fixtures
    assert (fixture.base_m, fixture.height_m, fixture.heat) == (1.2, 0.7, "hot")
    assert fixture.basis == ()
    assert fixture.centre_m == pytest.approx((1.9 + OFF_WALL_M + 0.15, 4.2 - 0.2 - 0.2))


def test_points() -> None:
    site = read(
        "socket hall east, 0.3 from south, 0.45 m\n"
        "router kitchen corner north-east\n"
        "socket hall west\n"
        "fused-spur landing south"
    )
    first, router, second, spur = site.outlets
    assert (first.kind, first.at_m, first.height_m) == ("power", pytest.approx((1.75, 0.3)), 0.45)
    assert (router.kind, router.basis_of("height_m")) == ("router", "default")
    assert (second.id, second.basis_of("at_m")) == ("hall-socket-2", "guessed")
    assert (spur.storey, spur.kind) == ("first", "fused-spur")


def test_stairs() -> None:
    site = read(
        "stairs hall to landing, 0.45 from east, 0.5 from south, runs north 2.0, then west 0.9, "
        "0.8 wide, balusters solid, enclosed"
    )
    stair = site.stairs[-1]
    assert stair.line_m == ((1.35, 0.5), (1.35, 2.5), (0.45, 2.5))
    assert (stair.id, stair.lower, stair.upper) == ("stairs-2", "ground", "first")
    assert (stair.width_m, stair.balusters, stair.is_enclosed) == (0.8, "solid", True)


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("radiator hall east 1.0 x 0.1, 0.4 from west", "does not say where along the wall"),
        ("radiator hall east 9.0 x 0.1, 0.4 from south", "beyond the end of that wall"),
        ("radiator hall east 1.0 x 0.1, 0.9 wide", "how wide it is, is given twice"),
        ("sofa hall east heat tepid", "'tepid' is not a word for 'heat'"),
        ("stairs hall to landing", "nothing says where the lowest step is"),
        ("stairs hall to landing, 0.4 from west", "nothing says where the lowest step is"),
        ("stairs hall to landing, 0.4 from west, 1 from south", "nothing says where the stairs lead"),
        ("stairs hall to landing, 0.4 from west, 1 from south, runs east 9", "is not in landing"),
    ],
)
def test_what_cannot_be_is_refused(line: str, message: str) -> None:
    with pytest.raises(NotesError, match=message):
        read(line)
