from __future__ import annotations

import io

import ezdxf
import pytest

from common.dxf_plan import Wish, written
from wardwright.errors import IntakeError
from wardwright.intake.dxf import file
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
            "the file ends before its last line, EOF",
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


def test_a_drawing_of_blocks_within_blocks_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    document = ezdxf.new("R2000")
    inner = document.blocks.new("block-0")
    inner.add_line((0, 0), (1, 0), dxfattribs={"layer": "WALL"})
    for level in range(1, 5):
        block = document.blocks.new(f"block-{level}")
        for number in range(10):
            block.add_blockref(f"block-{level - 1}", (number, 0))
    document.modelspace().add_blockref("block-4", (0, 0))
    text = io.StringIO()
    document.write(text)
    monkeypatch.setattr(file, "MOST_ENTITIES", 2000)
    with pytest.raises(IntakeError, match="more than 2000 entities, blocks taken apart") as caught:
        opened(io.BytesIO(text.getvalue().encode()), where="t.dxf")
    assert caught.value.cure


def test_a_block_within_itself_ends() -> None:
    document = ezdxf.new("R2000")
    block = document.blocks.new("round")
    block.add_line((0, 0), (1, 0), dxfattribs={"layer": "WALL"})
    block.add_blockref("round", (1, 0))
    document.modelspace().add_blockref("round", (0, 0))
    text = io.StringIO()
    document.write(text)
    assert 1 <= len(opened(io.BytesIO(text.getvalue().encode()), where="t.dxf").faces) < 50


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
