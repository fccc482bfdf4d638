from __future__ import annotations

import pytest
import shapely

from common.cottage import read
from wardwright.errors import NotesError
from wardwright.model.placement import along, opening_footprint, sides_of_opening
from wardwright.model.site import Site


def middle(site: Site, name: str) -> tuple[float, float]:
    opening = site.opening(name)
    return along(site.wall(opening.wall).line_m, opening.offset_m)


def test_an_opening_stands_where_the_line_says() -> None:
    site = read("window kitchen south 1.0 x 1.1 sill 0.9, 0.3 from its east end as w")
    # The kitchen's inner faces are at x 1.9 to 5.1, y 0.1 to 4.2; its outside wall is 0.3 thick.
    assert middle(site, "w") == pytest.approx((5.1 - 0.3 - 0.5, 0.1 - 0.15))
    assert (site.opening("w").sill_m, site.opening("w").head_m) == (0.9, 2.0)
    assert middle(site, "kitchen-door") == pytest.approx((1.85, 0.1 + 0.5 + 0.4))
    assert middle(site, "kitchen-window") == pytest.approx(((1.9 + 5.1) / 2, 4.35))
    hole = shapely.Polygon(opening_footprint(site.wall(site.opening("w").wall), site.opening("w")))
    assert hole.area == pytest.approx(1.0 * 0.3)


@pytest.mark.parametrize("rooms", ["hall kitchen", "kitchen hall"])
def test_the_rooms_may_be_named_either_way(rooms: str) -> None:
    site = read(f"door {rooms} 0.7 wide, 0.3 from its north end as second")
    assert middle(site, "second") == pytest.approx((1.85, 4.2 - 0.3 - 0.35))
    assert set(sides_of_opening(site, site.opening("second"))) == {"hall", "kitchen"}


@pytest.mark.parametrize(
    ("line", "side"),
    [
        ("door hall west opens inward", "hall"),
        ("door hall west opens outward", None),
        ("door kitchen east opens inward", "kitchen"),
        ("door kitchen east opens outward", None),
        ("door kitchen south opens outward", None),
        ("door kitchen hall 0.7 wide, 0.2 from its north end, opens into kitchen", "kitchen"),
        ("door kitchen hall 0.7 wide, 0.2 from its north end, opens into hall", "hall"),
        ("door hall kitchen 0.7 wide, 0.2 from its north end, opens into kitchen", "kitchen"),
        ("door hall kitchen 0.7 wide, 0.2 from its north end", "hall"),
    ],
)
def test_the_leaf_opens_to_the_side_that_is_named(line: str, side: str | None) -> None:
    site = read(line + " as tested")
    opening = site.opening("tested")
    left, right = sides_of_opening(site, opening)
    assert (left if opening.swing == "left" else right) == side
    assert opening.basis_of("swing") == ("told" if "opens" in line else "guessed")


@pytest.mark.parametrize(("end", "hinge"), [("south", "start"), ("north", "end")])
def test_the_hinge_is_at_the_end_that_is_named(end: str, hinge: str) -> None:
    site = read(f"door hall west 0.8 wide hinge {end} as tested")
    opening = site.opening("tested")
    first, last = site.wall(opening.wall).line_m
    assert first[1] < last[1]
    assert opening.hinge == hinge


def test_a_gap_has_no_leaf() -> None:
    gap = read("gap kitchen hall 1.2 wide, 0.2 from its north end").opening("kitchen-hall-gap")
    assert (gap.leaves, gap.lock, gap.habit, gap.habit_night, gap.hinge) == (
        0,
        "none",
        "open",
        "open",
        "none",
    )


def test_what_is_not_said_is_a_guess() -> None:
    door = read("door hall west").opening("hall-west-door")
    assert (door.width_m, door.head_m) == (0.8, 2.0)
    for field in ("width_m", "head_m", "offset_m", "swing"):
        assert door.basis_of(field) == "guessed"
    window = read("window hall west 1.0 x 0.9 head 2.1").opening("hall-west-window")
    assert (window.sill_m, window.head_m) == (pytest.approx(1.2), 2.1)


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("door landing east", "landing has no outside wall on its east side"),
        (
            "window kitchen north 0.4 x 1 sill 2.05, 0 from its west end",
            "in the wall that stands across there",
        ),
        ("door kitchen bedroom-1", "kitchen and bedroom-1 have no wall in common"),
        ("door hall attic", "there is no room or side 'attic'"),
        ("door kitchen hall 0.8 wide, 3.5 from its south end", "too short for an opening 0.8 m wide there"),
        ("door kitchen hall 0.8 wide, 0.9 from its south end", "would lie over kitchen-door"),
        (
            "door kitchen hall 0.7 wide, 0.2 from north, opens inward",
            "does not say into which of the two rooms",
        ),
        ("door hall west opens into kitchen", "it does not lead to kitchen"),
        ("door hall west hinge east", "that wall runs from south to north"),
        ("window hall west 1.0 x 1.0 0.9 wide", "its size is given twice"),
        ("window hall west 1.0 x 1.0 sill 2 head 1", "not higher than its sill"),
        ("door hall west glazing paper", "there is no glazing 'paper'"),
        ("door hall west 20 wide", "is 4.60 m long, too short"),
        ("door hall west leaves 40", "leaves cannot be so"),
    ],
)
def test_what_cannot_be_is_refused(line: str, message: str) -> None:
    with pytest.raises(NotesError, match=message):
        read(line)


def test_windows_may_stand_over_one_another() -> None:
    site = read("window kitchen north 1.2 x 0.4 sill 2.0 as top")
    assert site.opening("top").wall == site.opening("kitchen-window").wall
