from __future__ import annotations

import pytest
import shapely

from common.ifc_house import Wish, written
from wardwright.intake.ifc.reading import read_ifc
from wardwright.model.placement import space_at


@pytest.mark.parametrize("wish", [Wish(), Wish(schema="IFC2X3", unit_m=0.001)], ids=["metres", "millimetres"])
def test_the_walking_line_goes_up_through_the_treads(wish: Wish) -> None:
    site, report = read_ifc(written(wish), where="t.ifc")
    (stair,) = site.stairs
    assert (stair.lower, stair.upper) == ("ground", "upper")
    assert stair.line_m[0] == pytest.approx((0.75, 0.6), abs=1e-3)
    assert stair.line_m[-1][0] == pytest.approx(0.75, abs=1e-3)
    # The last tread ends at 3.4, the edge of the floor above: the line goes on a little past it.
    assert 3.4 < stair.line_m[-1][1] < 3.6
    assert stair.width_m == pytest.approx(0.8, abs=1e-3)
    assert stair.basis_of("line_m") == "guessed"
    assert any("walking line" in fact for fact in report.guessed)


def test_the_well_is_the_hole_in_the_floor_above() -> None:
    (stair,) = read_ifc(written(), where="t.ifc")[0].stairs
    assert stair.well_m is not None
    assert shapely.Polygon(stair.well_m).symmetric_difference(shapely.box(0.3, 1.0, 1.2, 3.4)).area < 0.01


def test_it_ends_in_a_room() -> None:
    site, _ = read_ifc(written(Wish(turn_deg=115.0)), where="t.ifc")
    (stair,) = site.stairs
    assert space_at(site, "ground", stair.line_m[0]) is not None
    assert space_at(site, "upper", stair.line_m[-1]) is not None


def test_a_stair_to_a_storey_that_is_left_out_is_left_out_and_said() -> None:
    site, report = read_ifc(written(), where="t.ifc", premises="A")
    assert site.stairs == ()
    assert "1 stair that joins no two kept storeys: stairs" in report.left_out
