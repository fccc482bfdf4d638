from __future__ import annotations

import pytest

from common.cottage import add, read
from wardwright.errors import NotesError
from wardwright.model.fabric import Wall
from wardwright.model.site import Site


def wall(site: Site, *rooms: str) -> Wall:
    return next(wall for wall in site.walls if wall.id == "-".join(rooms) + "-wall")


def test_walls_are_of_what_the_notes_say() -> None:
    site = read()
    between, about = wall(site, "hall", "kitchen"), wall(site, "hall", "west")
    assert (between.thickness_m, between.construction, between.is_exterior) == (
        0.1,
        "plasterboard-stud",
        False,
    )
    assert (about.thickness_m, about.construction, about.is_exterior) == (0.3, "cavity-brick", True)
    assert about.basis_of("construction") == "told"


def test_walls_of_which_nothing_is_said_are_guesses() -> None:
    site = read(house="storey g 2.4 high\nhall 2 x 2\nden 2 x 2 against hall east\nparty hall west\n")
    assert {w.construction for w in site.walls} == {"unknown"}
    assert {w.basis_of("thickness_m") for w in site.walls} == {"guessed"}
    assert {w.thickness_m for w in site.walls} == {0.1, 0.3, 0.215}


def test_a_party_wall_is_no_outside_wall() -> None:
    site = read("party hall west\nparty kitchen east south")
    assert wall(site, "hall", "west").is_exterior is False
    assert wall(site, "hall", "west").thickness_m == 0.215
    assert wall(site, "kitchen", "east").is_exterior is False
    with pytest.raises(NotesError, match="is a party wall"):
        read("party hall west\nwindow hall west 1 x 1")


def test_single_walls() -> None:
    site = read("construction kitchen north glass-wall\nconstruction kitchen hall concrete")
    assert wall(site, "kitchen", "north").construction == "glass-wall"
    assert wall(site, "hall", "kitchen").construction == "concrete"
    assert wall(site, "hall", "west").construction == "cavity-brick"
    imported = add("construction hall-west-wall timber measured")
    assert wall(imported, "hall", "west").construction == "timber"
    assert wall(imported, "hall", "west").basis_of("construction") == "measured"


@pytest.mark.parametrize(
    ("lines", "message"),
    [
        ("walls inside 0.1 papier", "there is no construction 'papier'"),
        ("walls outside 0.3 mm", "a wall 0.0003 m thick cannot be"),
        ("walls middle 0.1", "'middle' is not a kind of wall"),
        ("construction hall up brick", "there is no room 'up'"),
        ("party cellar west", "there is no room 'cellar'"),
    ],
)
def test_what_cannot_be_is_refused(lines: str, message: str) -> None:
    with pytest.raises(NotesError, match=message):
        read(lines)


def test_an_imported_wall_must_be_there() -> None:
    with pytest.raises(NotesError, match=r"there is no wall 'hall-wst-wall'\. Did you mean 'hall-west-wall'"):
        add("construction hall-wst-wall brick")


def test_rooms_that_are_joined_have_an_open_edge() -> None:
    site = read("den 2 x 2 at 20, 0\nnook 1 x 1 against den east, open")
    (edge,) = site.open_edges
    assert (set(edge.spaces), edge.line_m) == ({"den", "nook"}, ((22.0, 0.0), (22.0, 1.0)))
