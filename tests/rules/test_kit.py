"""Devices by kind; what alarms at once."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_opening, on_wall, one_room, opening, sheet, zone
from wardwright.errors import CatalogueError, NoneOfAKind, NotComputable
from wardwright.model.programme import STANDARD_BEHAVIOURS, Part
from wardwright.rules.kit import (
    contacts_elsewhere,
    control_units,
    devices_of,
    instant_devices,
    is_instant,
    movement_detectors,
    opening_contacts,
    some_of,
)

SITE = one_room(
    openings=(opening("door", "south", 2.65),),
    devices=(
        on_wall("z-fan", "fan", "south", 1.0),
        on_wall("a-fan", "fan", "south", 2.0),
        on_opening("contact", "door"),
        on_wall("stray", "contact", "south", 3.0),
    ),
)


def test_devices_come_by_kind_in_the_order_of_ids() -> None:
    assert [device.id for device, _ in devices_of(SITE, CATALOGUE, "movement-detector")] == ["a-fan", "z-fan"]
    assert [device.id for device, *_ in opening_contacts(SITE, CATALOGUE)] == ["contact"]
    assert [device.id for device in contacts_elsewhere(SITE, CATALOGUE)] == ["stray"]


def test_none_of_a_kind_is_said() -> None:
    with pytest.raises(NotComputable, match="no control unit"):
        control_units(SITE, CATALOGUE)
    with pytest.raises(NotComputable, match="no movement detector"):
        movement_detectors(one_room(), CATALOGUE)
    with pytest.raises(NotComputable, match="no opening contact"):
        list(opening_contacts(one_room(), CATALOGUE))


def test_the_kind_that_is_lacking_is_kept_beside_the_reason() -> None:
    with pytest.raises(NoneOfAKind, match="no CO alarm") as caught:
        some_of(SITE, CATALOGUE, "co-alarm")
    assert (caught.value.kind, caught.value.cure) == ("co-alarm", "Add the CO alarm where it is planned")
    assert len(some_of(SITE, CATALOGUE, "movement-detector")) == 2


def test_a_sheet_without_its_table_is_a_fault_of_the_catalogue() -> None:
    bare = CATALOGUE.model_copy(update={"sheets": (sheet("fan", "movement-detector"),)})
    site = one_room(devices=(on_wall("fan", "fan", "south", 1.0),))
    with pytest.raises(
        CatalogueError, match=r"sheet 'fan': .* without a table 'movement'. Add \[sheet.movement\]"
    ):
        movement_detectors(site, bare)


def test_of_the_usual_behaviours_two_alarm_at_once() -> None:
    assert [one.id for one in STANDARD_BEHAVIOURS if is_instant(one)] == ["instant", "always-on"]


def test_a_zone_of_the_night_part_does_not_help_an_empty_house() -> None:
    site = one_room(
        zones=(
            zone(1, "a", "both", parts=("full", "night")),
            zone(2, "b", "night-only", parts=("night",)),
            zone(3, "c", "entry", behaviour="entry-exit"),
            zone(4, "d", "always", behaviour="always-on", parts=()),
        )
    )
    assert instant_devices(site) == {"both", "always"}
    own = site.model_copy(update={"parts": (Part(id="night", name="night"),)})
    assert "night-only" in instant_devices(own)
