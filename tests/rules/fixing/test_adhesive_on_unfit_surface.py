"""FIX101: surface, cold, fresh paint; what is told and what is not."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_opening, on_wall, one_room, window
from wardwright.model.device import Device, Fixing
from wardwright.rules.finding import Finding
from wardwright.rules.fixing.adhesive_on_unfit_surface import adhesive_on_unfit_surface as rule
from wardwright.rules.registry import findings_of


def findings(device: Device | None = None, **fixing: Any) -> tuple[Finding, ...]:
    held = Fixing(**({"by": "adhesive", "surface": "upvc"} | fixing))
    one = device or on_opening("contact", "window", "contact-taped")
    site = one_room(
        openings=(window("window", "north", 2.65),), devices=(one.model_copy(update={"fixing": held}),)
    )
    return findings_of(rule, site, CATALOGUE)


@pytest.mark.parametrize(("surface_c", "count"), [(9.9, 1), (10.0, 0), (25.0, 0), (None, 0)])
def test_cold_below_ten_degrees_is_found(surface_c: float | None, count: int) -> None:
    assert len(findings(surface_c=surface_c)) == count


def test_a_cold_frame_is_to_be_warmed_first() -> None:
    (found,) = findings(surface_c=4.0)
    assert found.estimate is not None
    assert (found.estimate.value, found.estimate.unit, found.limit) == (4.0, "deg C", 10.0)
    assert found.mends[0].values == (("is_heated_before", True),)
    assert "30 s" in found.cure
    assert "72 h" in found.cure
    assert findings(surface_c=4.0, is_heated_before=True) == ()


@pytest.mark.parametrize(("days", "count"), [(13.0, 1), (14.0, 0), (None, 0)])
def test_paint_younger_than_a_fortnight_is_found(days: float | None, count: int) -> None:
    assert len(findings(paint_days=days)) == count


def test_a_textured_coating_is_neither_drilled_nor_glued() -> None:
    (found,) = findings(surface="textured")
    assert "asbestos" in found.message
    assert "tested for asbestos" in found.cure
    assert found.mends == ()


def test_wallpaper_is_cured_by_screws_where_the_sheet_has_them() -> None:
    (found,) = findings(on_wall("fan", "fan-plain", "south", 1.0), surface="wallpaper", surface_c=4.0)
    assert " and " in found.message
    assert found.mends[0].values == (("by", "screws"),)


def test_screws_are_not_asked() -> None:
    assert findings(by="screws", surface="textured", surface_c=-5.0) == ()


def test_a_surface_that_nobody_told_is_said() -> None:
    (found,) = findings(surface="unknown")
    assert (found.severity, found.mends[0].action) == ("not run", "tell")
