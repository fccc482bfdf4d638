from __future__ import annotations

import pytest
import shapely

from common.ifc_house import Wish, written
from wardwright.errors import IntakeError
from wardwright.intake.ifc.reading import read_ifc


def test_rooms_of_a_file_without_spaces_are_what_its_walls_close_in() -> None:
    site, report = read_ifc(written(Wish(with_spaces=False)), where="t.ifc")
    outlines = [shapely.Polygon(s.outline_m) for s in site.spaces]
    wanted = [
        shapely.box(0.3, 0.3, 3.5, 3.7),
        shapely.box(3.6, 0.3, 5.7, 3.7),
        shapely.box(0.3, 0.3, 5.7, 3.7),
    ]
    for outline, want in zip(outlines, wanted, strict=True):
        assert outline.symmetric_difference(want).area < 1e-3
    assert site.spaces[0].basis_of("outline_m") == "guessed"
    assert site.storeys[0].basis_of("height_m") == "guessed"
    assert any(
        fact.startswith("outline (by the ring of its walls) and use guessed on 3 spaces")
        for fact in report.guessed
    )


def test_premises_cannot_be_picked_without_spaces() -> None:
    with pytest.raises(IntakeError, match="holds no spaces"):
        read_ifc(written(Wish(with_spaces=False)), where="t.ifc", premises="A")
