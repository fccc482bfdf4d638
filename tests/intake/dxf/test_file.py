from __future__ import annotations

import io

import pytest

from common.dxf_plan import Wish, written
from wardwright.errors import IntakeError
from wardwright.intake.dxf.file import is_of, opened


def test_what_a_drawing_holds() -> None:
    found = opened(io.BytesIO(written()), where="t.dxf")
    assert found.form == "DXF AC1015"
    assert found.stated_unit == "inch"
    assert len(found.swings) == 3
    assert found.faces.shape[1:] == (2, 2)
    assert "HALL" in {text.words for text in found.texts}


def test_blocks_are_taken_apart_and_take_their_layer() -> None:
    plain, blocks = (opened(io.BytesIO(written(Wish(in_blocks=b))), where="t.dxf") for b in (False, True))
    assert len(blocks.leaves) == len(plain.leaves)
    assert blocks.swings == plain.swings


@pytest.mark.parametrize(
    ("data", "what"),
    [
        (b"AC1027 and more", "in its program's own form, not DXF"),
        (b"%PDF-1.4", "not a DXF file"),
        (b"", "not a DXF file"),
        (
            written()[:4000].rpartition(b"SECTION")[0] + b"SECTION\n2\nENT",
            "cannot be read as DXF|no layer of it",
        ),
    ],
    ids=["another program's", "PDF", "empty", "cut off"],
)
def test_what_is_no_drawing_is_refused(data: bytes, what: str) -> None:
    with pytest.raises(IntakeError, match=what) as caught:
        opened(io.BytesIO(data), where="t.dxf")
    assert caught.value.where == "t.dxf"
    assert caught.value.cure


def test_a_drawing_without_a_layer_of_walls_names_those_it_has() -> None:
    with pytest.raises(IntakeError, match=r"no layer .* named for walls \(it has: STUFF\)") as caught:
        opened(io.BytesIO(written(Wish(wall_layer="STUFF"))), where="t.dxf")
    assert "WALL" in caught.value.cure


@pytest.mark.parametrize(
    ("layer", "walls", "openings"),
    [
        ("A-WALL", True, False),
        ("xref-a$0$A-WALL", True, False),
        ("house|Waende", True, False),
        ("S-STEM-WALL", False, False),
        ("A-WALL-PATT", False, False),
        ("A-DOOR", False, True),
        ("A-DOOR-TAG", False, False),
        ("A-HEADER", False, False),
        ("Fenster", False, True),
        ("0", False, False),
    ],
)
def test_layers_by_their_own_names(layer: str, walls: bool, openings: bool) -> None:
    assert (is_of(layer, "walls"), is_of(layer, "openings")) == (walls, openings)
