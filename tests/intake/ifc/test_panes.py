from __future__ import annotations

from types import SimpleNamespace

import pytest

from common.ifc_house import Wish, written
from wardwright.intake.ifc.panes import is_opaque
from wardwright.intake.ifc.reading import read_ifc
from wardwright.model.leaves import leaf_panels
from wardwright.model.placement import is_way_in

GLASS = (("Panel:Glazed", 0.0, 2.0), ("Panel:Glazed", 2.0, 4.0), ("Panel:Solid metal", 4.0, 6.0))


@pytest.mark.parametrize("unit_m", [1.0, 0.001])
def test_each_glass_panel_is_a_pane_that_does_not_open(unit_m: float) -> None:
    site, report = read_ifc(written(Wish(panels=GLASS, unit_m=unit_m)), where="t.ifc")
    panes = [o for o in site.openings if o.wall == "glass-front"]
    assert [(round(o.offset_m, 3), round(o.width_m, 3), o.sill_m, o.head_m) for o in panes] == [
        (1.0, 2.0, 0.0, 2.4),
        (3.0, 2.0, 0.0, 2.4),
    ]
    assert {(o.kind, o.hinge, o.leaves, o.glazing) for o in panes} == {("window", "fixed", 0, "double-plain")}
    assert {o.basis_of("width_m") for o in panes} == {"measured"}
    assert {o.basis_of("glazing") for o in panes} == {"guessed"}
    assert all(is_way_in(site, o) for o in panes)
    assert "glass-front is a curtain wall: 2 panes that do not open" in report.oddities
    assert "glass-front: a panel of it is not glass, and stays wall" in report.oddities


def test_light_goes_through_a_pane_and_heat_does_not() -> None:
    site, _ = read_ifc(written(Wish(panels=GLASS)), where="t.ifc")
    wall = site.wall("glass-front")
    pane = next(o for o in site.openings if o.wall == wall.id)

    def stopped(medium: str) -> int:
        panels = leaf_panels(wall, pane, floor=0.0, whole=(0.0, 2.4), medium=medium, leaves="told")  # type: ignore[arg-type]
        return len(panels.panels)

    assert (stopped("heat"), stopped("light")) == (1, 0)


def test_a_curtain_wall_without_panels_is_one_fixed_window() -> None:
    site, report = read_ifc(written(Wish(panels=())), where="t.ifc")
    (pane,) = [o for o in site.openings if o.wall == "glass-front"]
    assert pane.basis_of("width_m") == "guessed"
    assert "glass-front is a curtain wall without panels: taken as one fixed window" in report.oddities


@pytest.mark.parametrize(
    ("name", "opaque"),
    [
        ("System Panel:Glazed:285583", False),
        ("Solid", True),
        ("Metal frame, glazed", False),
        ("Panel", False),
    ],
)
def test_a_panel_is_glass_unless_it_says_otherwise(name: str, opaque: bool) -> None:
    class Panel(SimpleNamespace):
        def is_a(self, name: str = "") -> bool | str:
            return name == "IfcPlate" if name else "IfcPlate"

        def id(self) -> int:
            return 1

    import wardwright.intake.ifc.panes as panes  # noqa: PLC0415, PLR0402

    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(panes, "type_of", lambda _: None)
        patched.setattr(panes, "layers_of", lambda _: iter(()))
        assert is_opaque(Panel(Name=name)) is opaque
