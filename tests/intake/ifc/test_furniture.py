from __future__ import annotations

import pytest

from common.ifc_house import Wish, written
from wardwright.intake.ifc.reading import read_ifc


@pytest.mark.parametrize("wish", [Wish(), Wish(unit_m=0.001, schema="IFC2X3")], ids=["metres", "millimetres"])
def test_furniture_is_a_box(wish: Wish) -> None:
    site, _ = read_ifc(written(wish), where="t.ifc")
    (sofa,) = site.fixtures
    assert (sofa.kind, sofa.storey, sofa.name) == ("sofa", "ground", "Sofa")
    assert sofa.centre_m == pytest.approx((2.9, 3.25))
    assert sofa.size_m == pytest.approx((1.0, 0.7))
    assert (sofa.base_m, sofa.height_m, sofa.heat) == (0.0, 0.8, "none")
    assert (sofa.basis_of("kind"), sofa.basis_of("size_m")) == ("guessed", "measured")


def test_a_turned_box_keeps_its_size() -> None:
    (sofa,) = read_ifc(written(Wish(turn_deg=40.0)), where="t.ifc")[0].fixtures
    assert sofa.size_m == pytest.approx((1.0, 0.7), abs=1e-3)
    assert sofa.turn_deg == pytest.approx(40.0)


def test_hot_things_are_known_by_name() -> None:
    data = written().replace(b"'Sofa'", b"'Radiator 600'")
    (radiator,) = read_ifc(data, where="t.ifc")[0].fixtures
    assert (radiator.kind, radiator.heat, radiator.basis_of("heat")) == ("radiator", "warm", "guessed")


def test_a_neighbours_furniture_is_left_out_and_said() -> None:
    site, report = read_ifc(written(), where="t.ifc", premises="A02")
    assert site.fixtures == ()
    assert "1 fixture in no room of ours: Sofa" in report.left_out
