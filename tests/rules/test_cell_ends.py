"""Lives of cells by stated defaults: the range holds each input's own swing."""

from __future__ import annotations

from common.houses import on_wall, one_room
from wardwright.physics.power.from_site import on_cells
from wardwright.rules.cell_ends import cells_end
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


def test_the_range_and_the_drivers() -> None:
    site = one_room(devices=(on_wall("pir", "movement-12m", "south", 2.0),))
    one = on_cells(site.devices[0], CATALOGUE)
    assert one is not None
    life = cells_end(site, CATALOGUE, one)
    assert life is not None
    assert 3.0 < life.low < life.value < life.high
    assert [driver.name for driver in life.drivers][:1] == ["what the device draws"]


def test_a_battery_of_no_rated_size_has_no_life() -> None:
    site = one_room(
        devices=(on_wall("pir", "movement-12m", "south", 2.0).model_copy(update={"cell": "lead-acid"}),)
    )
    one = on_cells(site.devices[0], CATALOGUE)
    assert one is not None
    assert cells_end(site, CATALOGUE, one) is None
