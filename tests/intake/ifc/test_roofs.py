from __future__ import annotations

import pytest

from common.ifc_house import Wish, written
from wardwright.intake.ifc.reading import read_ifc
from wardwright.model.placement import ceiling_height


def test_slopes_come_from_the_undersides_of_the_roof() -> None:
    site, report = read_ifc(written(Wish(gable=True)), where="t.ifc")
    assert [len(storey.slopes) for storey in site.storeys] == [0, 2]
    # 1.2 m at the eaves (y = 0 and 4), 2.2 m at the ridge (y = 2).
    for y, height in ((0.4, 1.4), (1.0, 1.7), (2.0, 2.2), (3.0, 1.7)):
        assert ceiling_height(site, "upper", (3.0, y)) == pytest.approx(height, abs=1e-3)
    assert ceiling_height(site, "ground", (3.0, 0.4)) == 2.5
    assert "2 sloped ceilings over Upper" in report.read
    assert site.storeys[1].basis_of("slopes") == "measured"


def test_a_flat_house_has_none() -> None:
    site, _ = read_ifc(written(), where="t.ifc")
    assert all(storey.slopes == () for storey in site.storeys)


def test_a_turned_roof_is_the_same_roof() -> None:
    site, _ = read_ifc(written(Wish(gable=True, turn_deg=90.0, unit_m=0.001)), where="t.ifc")
    # A quarter turn anticlockwise takes (3, 1) to (-1, 3).
    assert ceiling_height(site, "upper", (-1.0, 3.0)) == pytest.approx(1.7, abs=1e-3)
