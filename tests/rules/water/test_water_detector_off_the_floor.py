"""WTR101: the contacts above the floor, high on it, or covered."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_floor, on_wall, one_room
from common.mending import mended
from common.rule_houses.water import sink
from wardwright.model.site import Site
from wardwright.rules.registry import findings_of
from wardwright.rules.water.water_detector_off_the_floor import water_detector_off_the_floor as rule


def lead(height_m: float, sheet: str = "water-lead") -> Site:
    return one_room(devices=(on_wall("water", sheet, "south", 2.65, height_m=height_m),))


def test_a_lead_reaches_down_its_own_length() -> None:
    """A lead of 1.5 m: at 1.5 m it lies on the floor, at 1.8 m it ends 0.3 m above."""
    assert findings_of(rule, lead(1.5), CATALOGUE) == ()
    (found,) = findings_of(rule, lead(1.8), CATALOGUE)
    assert found.estimate is not None
    assert (found.estimate.value, found.limit) == (pytest.approx(0.3), 0.0)
    assert findings_of(rule, mended(lead(1.8), found.mends[0]), CATALOGUE) == ()


def test_high_contacts_are_a_matter_for_checking() -> None:
    (found,) = findings_of(rule, lead(0.5, "water-high-lead"), CATALOGUE)
    assert found.estimate is not None
    assert (found.estimate.value, found.limit, found.severity) == (0.004, 0.002, "check with the standard")
    assert found.mends[0].values == (("sheet", "water-lead"),)


def test_what_stands_on_its_place_covers_it() -> None:
    site = one_room(devices=(on_floor("water", "water", 2.0, 2.0, 0.0),), fixtures=(sink(2.0, 2.0),))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert "sink stands on its place" in found.message
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()
    raised = one_room(devices=site.devices, fixtures=(sink(2.0, 2.0, base_m=0.2),))
    assert findings_of(rule, raised, CATALOGUE) == ()
