from __future__ import annotations

import pytest

from common.cottage import add, read
from wardwright.errors import NotesError


def test_the_ground_about_the_house() -> None:
    ground = read("ground 0.3 below\nboundary 4 south, 10 north, 1 west\nroad 6 south").ground
    assert ground.level_m == -0.3
    # The outermost rooms span 0 to 5.1 and 0 to 4.6.
    assert ground.boundary_m == ((-1.0, -4.0), (5.1, -4.0), (5.1, 14.6), (-1.0, 14.6))
    assert ground.road_m == ((0.0, -6.0), (5.1, -6.0))


def test_things_that_stand_outside() -> None:
    ground = add(
        "outside bin 0.6 x 0.5, 1.1 high, 2 east, -1 north, climbable\noutside bin 1 x 1, 1 high, 0 east, 9 north"
    ).ground
    first, second = ground.things
    assert (first.kind, first.height_m, first.can_be_climbed) == ("bin", 1.1, True)
    assert first.outline_m == ((2.0, -1.0), (2.6, -1.0), (2.6, -0.5), (2.0, -0.5))
    assert (first.id, second.id, second.can_be_climbed) == ("bin", "bin-2", False)


@pytest.mark.parametrize(
    ("said", "expected"), [("", "default"), (", climbable", "told"), (", not-climbable", "told")]
)
def test_whether_it_can_be_climbed_is_known_only_where_it_is_said(said: str, expected: str) -> None:
    (shed,) = add(f"outside shed 1 x 1, 2 high, 0 east, 9 north{said}").ground.things
    assert shed.basis_of("can_be_climbed") == expected
    assert shed.can_be_climbed == (said == ", climbable")


def test_that_nothing_stands_outside_is_told() -> None:
    assert add("").ground.basis_of("things") == "default"
    ground = add("outside nothing").ground
    assert (ground.things, ground.basis_of("things")) == ((), "told")


def test_what_hangs_has_an_underside() -> None:
    (eaves,) = add("outside overhang 6 x 0.5, 5.2 high, base 5.0, 0 east, -0.8 north").ground.things
    assert (eaves.kind, eaves.base_m, eaves.height_m) == ("overhang", 5.0, 5.2)


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("boundary", "nothing says where it is"),
        ("road 4 south 5 north", "nothing says where it is"),
        ("outside rocket 1 x 1, 1 high", "'rocket' is not a thing outside"),
        ("outside bin 1 x 1, 1 high, 2 east", "its north is missing"),
        ("outside bin 1 high, 2 east, 3 north", "its size is missing"),
        (
            "outside bin 1 x 1, 1 high, 2 east, 3 north, climbable, not-climbable",
            "it is said to be climbed and not to be",
        ),
    ],
)
def test_what_cannot_be_is_refused(line: str, message: str) -> None:
    with pytest.raises(NotesError, match=message):
        read(line)
