from __future__ import annotations

import pytest

from common.cottage import add, read
from wardwright.errors import NotesError
from wardwright.model.placement import sides_of_opening


def test_set_and_its_short_forms_say_the_same() -> None:
    long = read(
        "set kitchen-window lock latch\nset kitchen-window glazing laminated\n"
        "set kitchen-door usually open night ajar\nset kitchen-window covering blind"
    )
    short = read(
        "lock kitchen-window latch\nglazing kitchen-window laminated\n"
        "habit kitchen-door open night ajar\ncovering kitchen-window blind"
    )
    assert short == long
    window, door = long.opening("kitchen-window"), long.opening("kitchen-door")
    assert (window.lock, window.glazing, window.covering) == ("latch", "laminated", "blind")
    assert (door.habit, door.habit_night) == ("open", "ajar")
    assert window.basis_of("lock") == "told"


def test_set_mends_sizes_and_marks_them() -> None:
    window = add("set kitchen-window sill 1.0, head 2.1, 0.9 wide, unlocked, fixed, measured").opening(
        "kitchen-window"
    )
    assert (window.sill_m, window.head_m, window.width_m, window.is_locked, window.hinge) == (
        1.0,
        2.1,
        0.9,
        False,
        "fixed",
    )
    assert window.basis_of("sill_m") == "measured"


@pytest.mark.parametrize("room", ["kitchen", "hall"])
def test_opens_is_read_for_imported_openings_too(room: str) -> None:
    site = add(f"set kitchen-door opens into {room}")
    opening = site.opening("kitchen-door")
    left, right = sides_of_opening(site, opening)
    assert (left if opening.swing == "left" else right) == room
    front = add("set front-door opens outward")
    left, right = sides_of_opening(front, front.opening("front-door"))
    assert (left if front.opening("front-door").swing == "left" else right) is None


def test_call_names_an_opening_by_its_rooms() -> None:
    site = add("call way-in door hall outside\ncall back window kitchen outside north\nlock way-in rc2")
    assert site.opening("front-door").name == "way-in"
    assert site.opening("front-door").lock == "rc2"
    assert site.opening("kitchen-window").name == "back"
    assert add("call inner door kitchen hall").opening("kitchen-door").name == "inner"


def test_call_takes_the_widest_when_asked() -> None:
    two = read("window kitchen south 1.5 x 1.0 sill 0.9 as wide-window")
    with pytest.raises(
        NotesError, match=r"2 openings fit that: kitchen-window \(1\.20 m wide\), wide-window"
    ):
        add("call view window kitchen outside", base=two)
    assert add("call view window kitchen outside widest", base=two).opening("wide-window").name == "view"
    assert add("call view window kitchen outside south", base=two).opening("wide-window").name == "view"


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("set front-door", "nothing is set"),
        ("set front-door 0.4 from west", "an opening cannot be moved with 'set'"),
        ("set front-door hinge north", "a hinge by compass needs a house from notes"),
        ("lock front-door padlock", "'padlock' is not a word for 'lock'"),
        ("glazing front-door paper", "there is no glazing 'paper'"),
        ("habit front-door wide-open", "'wide-open' is not a word for 'habit'"),
        ("set front-door sliding fixed", "given twice"),
        ("set front-door locked unlocked", "given twice"),
        ("call a door kitchen outside", "0 openings fit that"),
        ("call kitchen-window door hall outside", "another opening is called 'kitchen-window' already"),
        ("set front-door opens into attic", "there is no room 'attic'"),
    ],
)
def test_what_cannot_be_is_refused(line: str, message: str) -> None:
    with pytest.raises(NotesError, match=message):
        add(line)
