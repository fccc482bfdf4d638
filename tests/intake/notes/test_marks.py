from __future__ import annotations

from common.cottage import read
from wardwright.intake.notes.clauses import Clauses
from wardwright.intake.notes.marks import changed, marks
from wardwright.intake.notes.words import Line
from wardwright.model.opening import Opening

LINE = Line((), where="x")
PLAIN, MEASURED = Clauses(LINE), Clauses(LINE, flags={"measured"})


def test_told_needs_no_mark_and_a_guess_always_has_one() -> None:
    assert marks(PLAIN, ["width_m"]) == ()
    assert marks(PLAIN, ["width_m"], guessed=["head_m"]) == (("head_m", "guessed"),)
    assert marks(MEASURED, ["width_m"], guessed=["head_m"]) == (
        ("head_m", "guessed"),
        ("width_m", "measured"),
    )
    assert marks(Clauses(LINE, flags={"guessed"}), ["width_m"]) == (("width_m", "guessed"),)


def test_a_change_replaces_the_mark_of_its_field_alone() -> None:
    door = Opening(
        id="a", name="a", kind="door", wall="w", offset_m=1.0, width_m=0.8,
        basis=(("offset_m", "guessed"), ("width_m", "guessed")),
    )  # fmt: skip
    told = changed(door, {"width_m": 0.9}, PLAIN)
    assert (told.width_m, told.basis_of("width_m"), told.basis_of("offset_m")) == (0.9, "told", "guessed")
    measured = changed(told, {"offset_m": 1.1}, MEASURED)
    assert measured.basis_of("offset_m") == "measured"
    assert measured.basis_of("lock") == "default"


def test_marks_of_a_whole_line() -> None:
    site = read(
        "window hall west 0.6 x 0.9 sill 1.3 measured as small\nwindow bedroom-1 south 1 x 1 as other"
    )
    small, other = site.opening("small"), site.opening("other")
    assert (small.basis_of("width_m"), small.basis_of("offset_m")) == ("measured", "guessed")
    assert (other.basis_of("width_m"), other.basis_of("sill_m"), other.basis_of("lock")) == (
        "told",
        "guessed",
        "default",
    )
