from __future__ import annotations

import re

import numpy as np
import pytest

from common.ifc_house import Wish, written
from wardwright.errors import IntakeError
from wardwright.intake.ifc.file import IfcHouse, layers_of, slug, stated


@pytest.mark.parametrize(
    ("data", "what"),
    [
        (b"", "does not begin with ISO-10303-21"),
        (b"  0\nSECTION\n", "does not begin with ISO-10303-21"),
        (b"PK\x03\x04 and so on", "packed file"),
        (b"ISO-10303-21;\nHEADER;\nENDSEC;\n", "ends before its last line"),
        (
            b"ISO-10303-21;\nHEADER;\nFILE_SCHEMA(('NONSENSE'));\nENDSEC;\nEND-ISO-10303-21;",
            "cannot be read as IFC",
        ),
    ],
)
def test_what_is_no_ifc_file_is_refused(data: bytes, what: str) -> None:
    with pytest.raises(IntakeError, match=what) as caught:
        IfcHouse(data, where="house.ifc")
    assert caught.value.where == "house.ifc"
    assert caught.value.cure


def test_a_file_without_a_project_is_refused() -> None:
    empty = (
        b"ISO-10303-21;\nHEADER;\nFILE_DESCRIPTION((''),'2;1');\nFILE_NAME('','',(''),(''),'','','');\n"
        b"FILE_SCHEMA(('IFC4'));\nENDSEC;\nDATA;\nENDSEC;\nEND-ISO-10303-21;\n"
    )
    with pytest.raises(IntakeError, match="no IfcProject"):
        IfcHouse(empty, where="house.ifc")


@pytest.mark.parametrize("unit", [1.0, 0.001])
def test_solids_are_in_metres(unit: float) -> None:
    house = IfcHouse(written(Wish(unit_m=unit)), where="t")
    (kitchen,) = [s for s in house.of("IfcSpace") if s.Name == "A02"]
    solid = house.solid(kitchen)
    assert solid is not None
    assert np.ptp(solid.points, axis=0) == pytest.approx((2.1, 3.4, 2.5), abs=1e-6)


def test_a_far_off_house_is_moved_near_the_origin_and_keeps_its_size() -> None:
    house = IfcHouse(written(Wish(offset=(450_000.0, 5_400_000.0, 113.0), turn_deg=25.0)), where="t")
    solid = house.solid(next(w for w in house.of("IfcWall") if w.Name == "south 0"))
    assert solid is not None
    assert np.abs(solid.points).max() < 20.0
    assert solid.low == pytest.approx(0.0, abs=1e-6)
    corners = np.unique(solid.points[:, :2].round(4), axis=0)
    assert max(np.hypot(*(a - b)) for a in corners for b in corners) == pytest.approx(
        np.hypot(6, 0.3), abs=1e-3
    )


def test_a_near_house_stays_where_it_is() -> None:
    house = IfcHouse(written(Wish(offset=(900.0, 0.0, 0.0))), where="t")
    assert house.shift == (0.0, 0.0, 0.0)


def test_ids_are_made_once() -> None:
    house = IfcHouse(written(), where="t")
    assert [house.new_id("Tür 1", "door"), house.new_id("Tür 1", "door"), house.new_id("***", "door")] == [
        "tuer-1",
        "tuer-1-2",
        "door",
    ]
    assert slug("Ölöf & Søn") == "oeloef-soen" or slug("Ölöf & Søn") == "oeloef-son"


def test_classes_that_a_schema_lacks_are_none() -> None:
    assert IfcHouse(written(Wish(schema="IFC2X3")), where="t").of("IfcSpatialZone") == []


def test_materials_and_what_is_not_stated() -> None:
    house = IfcHouse(written(), where="t")
    wall = next(w for w in house.of("IfcWall") if w.Name == "inner")
    assert list(layers_of(wall)) == [("Plasterboard on studs", 0.0)]
    assert stated(wall, "Pset_WallCommon", "IsExternal") is None


def test_a_placement_within_itself_is_named() -> None:
    looped = re.sub(rb"#(\d+)=IFCLOCALPLACEMENT\(#\d+,", rb"#\1=IFCLOCALPLACEMENT(#\1,", written())
    with pytest.raises(IntakeError, match="its placement is broken") as caught:
        IfcHouse(looped, where="house.ifc")
    assert caught.value.where.startswith("house.ifc, #")
