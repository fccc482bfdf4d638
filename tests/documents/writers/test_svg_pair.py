"""Two drawings abreast."""

from __future__ import annotations

from xml.etree import ElementTree as ET

from wardwright.documents.drawing.quantiles import SpreadRow, spreads
from wardwright.documents.drawing.recording import Drawing
from wardwright.documents.writers.svg_pair import GAP_MM, write_svg_pair


def drawing(key: str) -> Drawing:
    row = SpreadRow("notice", "5 s", 1.0, 5.0, 9.0, (3.0, 7.0))
    return spreads((row,), end=10.0, unit="s", key=key, description=f"the {key} one")


def test_both_stand_beside_each_other_at_their_own_size() -> None:
    left, right = drawing("left"), drawing("right")
    root = ET.fromstring(write_svg_pair(left, right))  # noqa: S314 - our own
    inner = [one for one in root if one.tag.endswith("}svg")]
    assert [float(one.attrib["x"]) for one in inner] == [0.0, left.width_mm + GAP_MM]
    assert [float(one.attrib["width"]) for one in inner] == [left.width_mm, right.width_mm]
    assert float(root.attrib["width"].removesuffix("mm")) == left.width_mm + GAP_MM + right.width_mm
    ids = [one.attrib["id"] for one in root.iter() if "id" in one.attrib]
    assert len(ids) == len(set(ids))
    assert {"left-title", "right-title"} <= set(ids)
