import pytest

from common.broken import found, only

WIN = "openings/kitchen-window/"
DOOR = "openings/kitchen-door/"


@pytest.mark.parametrize(
    ("edits", "what"),
    [
        (((WIN + "hinge", "fixed"), (WIN + "habit_night", "open")), "it is fixed and yet stands open"),
        (((DOOR + "kind", "gap"), (DOOR + "glazing", "laminated")), "a gap has no glass"),
        (((DOOR + "kind", "gap"), (DOOR + "lock", "deadlock")), "a gap has no lock"),
        (((DOOR + "joins", [None, None]),), "'joins' names no space"),
        (
            ((DOOR + "joins", ["landing", "kitchen"]),),
            "it joins the space 'landing', which is not on its wall's storey 'ground'",
        ),
    ],
)
def test_what_contradicts_itself_stops(edits: tuple[tuple[str, object], ...], what: str) -> None:
    weight, _, said = only(*edits)
    assert (weight, said) == ("stops", what)


@pytest.mark.parametrize(
    ("edits", "what"),
    [
        (((DOOR + "joins", ["hall", "hall"]),), "it joins the space 'hall' to itself"),
        (((DOOR + "is_entry_door", True),), "it is an entry door, but does not lead in from outside"),
        (
            ((WIN + "offset_m", 3.65),),
            "it reaches 0.05 m past the end of its wall 'east', which is 4.20 m long",
        ),
        (((WIN + "head_m", 2.6),), "its head (2.6 m) is 0.20 m above the ceiling of 'ground' (2.4 m)"),
        (
            (("walls/east/base_m", 1.4), ("walls/east/height_m", 1.0)),
            "its sill (0.9 m) is below the foot of its wall 'east' (1.4 m)",
        ),
    ],
)
def test_imperfections_of_drawing_are_noted(edits: tuple[tuple[str, object], ...], what: str) -> None:
    weight, _, said = only(*edits)
    assert (weight, said) == ("noted", what)


def test_a_head_above_a_low_wall_stops() -> None:
    assert only(("walls/east/height_m", 1.5)) == (
        "stops",
        "kitchen-window",
        "its head (2.1 m) is 0.60 m above the top of its wall 'east' (1.5 m)",
    )


def test_a_high_space_lets_a_window_be_higher() -> None:
    assert found((WIN + "head_m", 3.4), ("spaces/kitchen/height_m", 3.6)) == ()


def test_a_rooflight_is_not_held_against_its_wall() -> None:
    assert found((WIN + "kind", "rooflight"), (WIN + "sill_m", 2.2), (WIN + "head_m", 3.4)) == ()


@pytest.mark.parametrize(
    ("offset_m", "weights"),
    [(0.6, []), (0.7, ["noted"]), (1.2, ["stops"])],
    ids=["beside", "a little", "much"],
)
def test_openings_that_overlap(offset_m: float, weights: list[str]) -> None:
    light = {
        "id": "l",
        "name": "side light",
        "kind": "window",
        "wall": "south",
        "offset_m": offset_m,
        "width_m": 1.1,
    }
    assert [p.weight for p in found(("openings/+", light | {"head_m": 0.9}))] == weights


def test_an_opening_above_another_does_not_overlap_it() -> None:
    light = {
        "id": "l",
        "name": "fanlight",
        "kind": "window",
        "wall": "south",
        "offset_m": 1.6,
        "width_m": 0.9,
    }
    assert found(("openings/+", light | {"sill_m": 2.0, "head_m": 2.3})) == ()


def test_the_entry_door_of_a_flat_may_lead_to_shared_stairs() -> None:
    assert (
        found(
            ("spaces/hall/belongs", "shared"),
            ("openings/front-door/is_entry_door", False),
            (DOOR + "is_entry_door", True),
        )
        == ()
    )
