from __future__ import annotations

import pytest

from wardwright.intake.dxf.texts import Text, is_outside, names_in, room_size_in, size_in

FT, IN = 0.3048, 0.0254


# What the trade's codes mean: feet and inches of the width, then of the height.
@pytest.mark.parametrize(
    ("words", "width", "height", "kind"),
    [
        ("2668", 2 * FT + 6 * IN, 6 * FT + 8 * IN, "door"),
        ("3068", 3 * FT, 6 * FT + 8 * IN, "door"),
        ("2468", 2 * FT + 4 * IN, 6 * FT + 8 * IN, "door"),
        ("5050 XO", 5 * FT, 5 * FT, "sliding-window"),
        ("2050 SH", 2 * FT, 5 * FT, "hung-window"),
        ("6068 S.G.D.", 6 * FT, 6 * FT + 8 * IN, "sliding-door"),
        ("16070 O.H. DOOR", 16 * FT, 7 * FT, "garage-door"),
        ("26610", 2 * FT + 6 * IN, 6 * FT + 10 * IN, "door"),
        ("1660", FT + 6 * IN, 6 * FT, "window"),
        ("900x2100", 0.9, 2.1, "door"),
        ("1200 x 1000", 1.2, 1.0, "window"),
    ],
)
def test_sizes_of_openings(words: str, width: float, height: float, kind: str) -> None:
    size = size_in(words)
    assert size is not None
    assert (size.width_m, size.height_m) == pytest.approx((width, height))
    assert size.kind == kind


@pytest.mark.parametrize("words", ["HALL", "A6", "2668 STUDS", "1968", "0000", "12", "R-309.2", "13'8 x 14'"])
def test_what_is_no_size(words: str) -> None:
    size = size_in(words)
    # A year such as 1968 reads as 1 ft 9 in by 6 ft 8 in: only a gap of that width beside it would take it.
    assert size is None or words == "1968"


@pytest.mark.parametrize(
    ("words", "sides"),
    [
        ("13'8 x 14'", (13 * FT + 8 * IN, 14 * FT)),
        ("5' x 8'1", (5 * FT, 8 * FT + IN)),
        ("12'-6\" x 10'-0\"", (12 * FT + 6 * IN, 10 * FT)),
        ("22x30", None),
        ("HALL", None),
    ],
)
def test_sizes_of_rooms(words: str, sides: tuple[float, float] | None) -> None:
    assert room_size_in(words) == (None if sides is None else pytest.approx(sides))


def at(words: str, x: float, y: float, *, height: float = 0.2) -> Text:
    return Text(words, (x, y), height, 0.0)


def test_names_of_rooms_and_not_notes() -> None:
    texts = (
        at("MASTER", 0, 1), at("BEDROOM", 0, 0.7), at("W.I.C.", 9, 0), at("22x30 ATTIC ACCESS HERE", 5, 5),
        at("WALL BETWEEN GARAGE AND HOUSE", 5, 6), at("2668", 1, 1), at("TEMP.", 2, 2), at("CLO.", 3, 3),
    )  # fmt: skip
    assert [text.words for text in names_in(texts)] == ["MASTER BEDROOM", "W.I.C.", "CLO."]


def test_floor_in_the_open() -> None:
    assert [is_outside(name) for name in ("Covered deck", "Porch", "Hall")] == [True, True, False]
