from __future__ import annotations

import io
import math
from dataclasses import replace

import numpy as np
import pytest

from common.dxf_plan import Wish, written
from wardwright.errors import IntakeError
from wardwright.intake.dxf.file import opened
from wardwright.intake.dxf.unit import Unit, unit_of, usual_gap


def found(wish: Wish, told: str | None = None) -> Unit:
    return unit_of(opened(io.BytesIO(written(wish)), where="t.dxf"), told=told, where="t.dxf")


@pytest.mark.parametrize("unit", ["mm", "cm", "m", "inch", "foot"])
@pytest.mark.parametrize("with_sizes", [True, False])
def test_each_unit_is_believed_when_the_header_is_right(unit: str, with_sizes: bool) -> None:
    assert found(Wish(unit=unit, header=unit, with_sizes=with_sizes)).name == unit


@pytest.mark.parametrize("unit", ["mm", "cm", "m", "inch", "foot"])
def test_each_unit_is_found_when_the_header_is_wrong_or_silent(unit: str) -> None:
    wrong = "mm" if unit != "mm" else "inch"
    for header in (wrong, ""):
        unit_found = found(Wish(unit=unit, header=header))
        assert unit_found.name == unit
        assert "3 sizes written beside door swings agree" in unit_found.evidence
    assert found(Wish(unit=unit, header=wrong, with_sizes=False)).name == unit


def test_the_evidence_is_said() -> None:
    said = found(Wish(unit="inch", header="mm")).evidence
    assert said.startswith(
        "unit: inches, although the header says millimetres: 3 door swings are 0.76 m wide"
    )
    assert "(0.030 m by the header)" in said


def test_what_is_told_counts() -> None:
    unit = found(Wish(unit="inch", header="mm"), told="cm")
    assert (unit.name, unit.metres) == ("cm", 0.01)
    assert unit.evidence == "unit: centimetres, as told; the header says millimetres"


def test_a_unit_that_cannot_be_told_is_asked_for() -> None:
    drawing = opened(io.BytesIO(written(Wish(header=""))), where="t.dxf")
    lone = drawing._replace(faces=drawing.faces[:1], swings=(), texts=())
    with pytest.raises(IntakeError, match="its unit cannot be told: the header says none") as caught:
        unit_of(lone, told=None, where="t.dxf")
    assert "--unit" in caught.value.cure


def test_the_usual_gap_between_faces() -> None:
    faces = np.array(
        [[(0, 0), (5, 0)], [(0, 0.2), (5, 0.2)], [(0, 3), (5, 3)], [(0, 3.2), (5, 3.2)]], dtype=float
    )
    assert usual_gap(faces) == pytest.approx(0.2)
    assert math.isnan(usual_gap(faces[:1]))
    assert replace(Wish(), unit="m").unit == "m"
