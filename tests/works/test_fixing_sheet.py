"""How a device is fixed."""

from __future__ import annotations

import pytest

from common.houses import on_ceiling, on_wall, one_room, standing_free
from common.priced_room import HALL
from common.turning import quarter_turned
from wardwright.model.device import Device, Fixing
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.works.fixing_sheet import FixingSheet, fixing_sheet

CATALOGUE = load_catalogue()


def sheet(device: Device, site: Site | None = None) -> FixingSheet:
    house = one_room(devices=(device,)) if site is None else site
    return fixing_sheet(house, CATALOGUE, device)


@pytest.mark.parametrize(
    ("wall", "offset", "corner", "far"),
    # The room's corners are 0.15 m inside the walls' ends; the room is 5 m by 4 m and on the left of each wall.
    # Whoever faces the south wall from inside has its beginning, the west end, on their right.
    [("south", 1.15, "right", 1.0), ("south", 4.15, "left", 1.0), ("east", 0.65, "right", 0.5)],
)
def test_the_nearer_corner_is_named_as_one_faces_the_wall(
    wall: str, offset: float, corner: str, far: float
) -> None:
    found = sheet(on_wall("md", "movement-12m", wall, offset))
    assert found.corner == corner
    assert found.from_corner_m == pytest.approx(far)


def test_a_turned_house_is_measured_alike() -> None:
    site = read_sample("terrace")
    turned = quarter_turned(site)
    for device in site.devices:
        one, other = sheet(device, site), sheet(turned.device(device.id), turned)
        assert one.corner == other.corner
        assert one.from_corner_m == pytest.approx(other.from_corner_m)


def test_what_hangs_on_no_wall_has_no_corner() -> None:
    for device in (on_ceiling("s", "smoke-alarm-radio", 2, 2), standing_free("w", "water-radio", 1, 1)):
        found = sheet(device)
        assert (found.corner, found.from_corner_m) == (None, None)


def test_what_is_not_decided_stays_so() -> None:
    found = sheet(HALL)
    assert (found.held_by, found.surface, found.drilled) == (None, "unknown", "unknown")
    assert found.least_surface_c is None
    assert "drilling" in found.dangers


def test_tape_asks_for_a_warm_dry_surface() -> None:
    taped = HALL.model_copy(update={"fixing": Fixing(by="adhesive", surface="plaster")})
    found = sheet(taped)
    assert (found.held_by, found.drilled) == ("adhesive", None)
    assert (found.least_surface_c, found.least_paint_days) == (10.0, 14.0)


def test_a_contact_is_in_the_room_that_its_door_leads_into() -> None:
    site = read_sample("terrace")
    assert sheet(site.device("front-door-contact"), site).space == "hall"
    assert sheet(site.device("bedroom-1-sounder"), site).space is None
