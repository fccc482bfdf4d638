from __future__ import annotations

import pytest

from common.ifc_house import Wish, written
from wardwright.intake.ifc.reading import read_ifc
from wardwright.model.opening import Opening
from wardwright.model.placement import is_way_in, sides_of_opening


def openings(wish: Wish) -> dict[str, Opening]:
    return {opening.id: opening for opening in read_ifc(written(wish), where="t.ifc")[0].openings}


@pytest.mark.parametrize(
    "wish",
    [Wish(), Wish(schema="IFC2X3", unit_m=0.001), Wish(turn_deg=200.0, offset=(3e5, 5e6, 80.0))],
    ids=["metres", "2x3 in millimetres", "turned and far off"],
)
def test_place_size_and_heights(wish: Wish) -> None:
    found = openings(wish)
    front, window = found["front-door"], found["kitchen-window"]
    assert (front.kind, front.wall) == ("door", "south-0")
    assert (front.offset_m, front.width_m) == pytest.approx((2.45, 0.9), abs=2e-4)
    assert (front.sill_m, front.head_m) == pytest.approx((0.0, 2.0), abs=2e-4)
    assert (window.kind, window.wall) == ("window", "east-0")
    assert (window.offset_m, window.width_m) == pytest.approx((1.7, 1.2), abs=2e-4)
    assert (window.sill_m, window.head_m) == pytest.approx((0.9, 2.1), abs=2e-4)
    assert found["bedroom-window"].sill_m == pytest.approx(0.9, abs=2e-4)


def test_what_is_measured_and_what_is_guessed() -> None:
    found = openings(Wish())
    assert [found["front-door"].basis_of(f) for f in ("width_m", "hinge", "lock")] == [
        "measured",
        "measured",
        "guessed",
    ]
    assert found["kitchen-window"].glazing == "double-plain"
    assert found["kitchen-window"].basis_of("glazing") == "guessed"
    assert found["front-door"].glazing is None
    assert found["front-door"].basis_of("habit") == "default"


def test_ways_in_are_the_outside_ones() -> None:
    site, _ = read_ifc(written(), where="t.ifc")
    ways = {o.id for o in site.openings if is_way_in(site, o)}
    assert ways == {"front-door", "kitchen-window", "bedroom-window"}
    assert sides_of_opening(site, site.opening("front-door")) == ("hall-a01", None)
    assert set(sides_of_opening(site, site.opening("kitchen-door"))) == {"hall-a01", "kitchen-a02"}


def test_a_door_to_the_neighbour_is_a_way_in() -> None:
    site, _ = read_ifc(written(), where="t.ifc", premises="A01")
    assert {o.id for o in site.openings if is_way_in(site, o)} == {"front-door", "kitchen-door"}
