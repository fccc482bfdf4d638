from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wardwright.errors import NotesError
from wardwright.intake.notes.lengths import cut, without_comment


def values(text: str) -> list[float]:
    return [token.value for token in cut(text, where="x") if token.kind == "quantity"]


@pytest.mark.parametrize(
    ("written", "metres"),
    [
        # An inch is 25.4 mm and a foot 12 inches by definition.
        ("3.2", 3.2),
        ("3.2 m", 3.2),
        ("3.2m", 3.2),
        ("320 cm", 3.2),
        ("3200 mm", 3.2),
        ("-0.4", -0.4),
        ("10'", 3.048),
        ("10'6\"", 3.2004),
        ("10' 6\"", 3.2004),
        ("10 ft 6 in", 3.2004),
        ("10 feet 6 inches", 3.2004),
        ("10ft", 3.048),
        ('30"', 0.762),
        ("30 in", 0.762),
        ('6 1/2"', 0.1651),
        ("10' 6 1/2\"", 3.2131),
        ('1/2"', 0.0127),
    ],
)
def test_a_length_is_read_in_metres(written: str, metres: float) -> None:
    assert values(written) == pytest.approx([metres], abs=1e-9)


@pytest.mark.parametrize(
    ("written", "value", "unit"),
    [
        ("30 s", 30, "s"),
        ("0.5 min", 30, "s"),
        ("30 kg", 30, "kg"),
        ("10 lb", 4.5359237, "kg"),  # the pound by definition
        ("45 deg", 45, "deg"),
        ("28 C", 28, "C"),
        ("7", 7, None),
    ],
)
def test_other_quantities_keep_their_unit(written: str, value: float, unit: str | None) -> None:
    (token,) = cut(written, where="x")
    assert (token.value, token.unit) == (pytest.approx(value), unit)


@pytest.mark.parametrize("written", ["3.2 x 4.1", "3.2x4.1", "3.2 x4.1", "10'6\" x 13 ft 5 1/2 in"])
def test_a_size_is_two_lengths_and_a_word(written: str) -> None:
    first, times, second = cut(written, where="x")
    assert times.written == "x"
    assert first.value == pytest.approx(3.2, abs=0.001)
    assert second.value == pytest.approx(4.1, abs=0.003)


def test_commas_part_and_quotes_join() -> None:
    pieces = cut('zone 1, "Ground hall; left" hall-movement', where="x")
    assert [piece.kind for piece in pieces] == ["word", "quantity", "text", "word"]
    assert pieces[2].written == "Ground hall; left"


@pytest.mark.parametrize(
    "written", ["3,2 x 4.1", "hall 2nd", "3.2.1", 'named "open', "@", "hall_1 ?", "12metres"]
)
def test_what_cannot_be_read_is_refused(written: str) -> None:
    with pytest.raises(NotesError) as caught:
        cut(written, where="cottage.notes line 4")
    assert caught.value.where == "cottage.notes line 4"


@pytest.mark.parametrize(
    ("line", "kept"),
    [
        ("door # left", "door "),
        ('named "Flat #2" # new', 'named "Flat #2" '),
        ("keypad 4'7\" # five feet", "keypad 4'7\" "),
        ('"Bedroom 1" # front', '"Bedroom 1" '),
        ("# all", ""),
    ],
)
def test_a_comment_is_cut_off(line: str, kept: str) -> None:
    assert without_comment(line) == kept


@given(st.text(max_size=40))
def test_any_text_is_cut_or_refused(text: str) -> None:
    line = "".join(text.splitlines())
    try:
        pieces = cut(without_comment(line), where="x")
    except NotesError:
        return
    assert all(piece.written or piece.kind == "text" for piece in pieces)


@given(st.integers(0, 60), st.integers(0, 11))
def test_feet_and_inches_agree_with_inches(feet: int, inches: int) -> None:
    assert values(f"{feet}'{inches}\"") == pytest.approx(values(f'{12 * feet + inches}"'))


def test_what_cannot_be_read_is_shown_short_and_safely() -> None:
    with pytest.raises(NotesError, match=r"'\\x7f' cannot be read"):
        cut("hall \x7f", where="x")
    for written in ("a" * 121, '"' + "b" * 121 + '"'):
        with pytest.raises(NotesError, match="letters long") as caught:
            cut(written, where="x")
        assert len(str(caught.value)) < 200
    assert len(cut("c" * 120, where="x")) == 1
