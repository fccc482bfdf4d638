"""Water detectors and the nearest thing that may leak."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_floor, one_room, two_rooms_and_hall
from common.rule_houses.water import sink
from wardwright.errors import CatalogueError, NoneOfAKind
from wardwright.rules.water_detectors import to_water_m, water_detectors


def test_the_distance_is_to_the_outline() -> None:
    found = to_water_m(one_room(fixtures=(sink(0.5, 2.0),)), "ground", (3.0, 2.0))
    assert found is not None
    assert found[0] == pytest.approx(3.0 - 0.8)


def test_what_is_dry_or_behind_a_wall_does_not_count() -> None:
    assert to_water_m(one_room(fixtures=(sink(0.5, 2.0, kind="bed"),)), "ground", (3.0, 2.0)) is None
    assert to_water_m(two_rooms_and_hall(fixtures=(sink(3.5, 1.0),)), "ground", (5.0, 1.0)) is None


def test_each_has_its_sheet_and_space() -> None:
    (one,) = water_detectors(one_room(devices=(on_floor("w", "water", 1.0, 2.0, 0.0),)), CATALOGUE)
    assert (one.point, one.sheet.lead_m) == ((1.0, 2.0), 0.0)
    assert one.space is not None
    with pytest.raises(NoneOfAKind):
        water_detectors(one_room(), CATALOGUE)
    bare = CATALOGUE.model_copy(
        update={"sheets": tuple(one.model_copy(update={"water": None}) for one in CATALOGUE.sheets)}
    )
    with pytest.raises(CatalogueError, match="without a table 'water'"):
        water_detectors(one_room(devices=(on_floor("w", "water", 1.0, 2.0, 0.0),)), bare)
