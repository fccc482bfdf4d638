"""The arrival band, and what a detector sees of it with doors in each habitual state."""

from __future__ import annotations

import numpy as np
import pytest

from common.arrival_house import HALL, KEYPAD, KITCHEN, arrival_house
from common.houses import on_wall
from common.turning import quarter_turned
from wardwright.model.device import WallMount
from wardwright.model.opening import LeafState
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.arrival_band import NOTHING_SEEN, band_of, doors_passed, seen_of_band
from wardwright.trials.barriers import CELL_M, grids_of
from wardwright.trials.trips import controls_of, trips

CATALOGUE = load_catalogue()
CONTROLS = (KEYPAD,)


def seen(state: LeafState | None, device: str = "kitchen-movement") -> tuple[float, float, float, float]:
    site = arrival_house(kitchen_door=state)
    found = seen_of_band(site.bare, CATALOGUE, site.device(device), controls=CONTROLS)
    return found.usual, found.low, found.high, found.ever


def test_the_band_is_near_the_walk_inside_the_hall_and_in_no_other_room() -> None:
    house = arrival_house().bare
    band, grid = band_of(house, CATALOGUE, CONTROLS)["ground"], grids_of(house)["ground"]
    x, y = grid.centres()[band].T
    # The hall is 4.1 to 6.1; nobody's middle is nearer to a wall than half a body.
    assert x.min() >= 4.1 + 0.22 - 1e-9
    assert x.max() <= 6.1 - 0.22 + 1e-9
    assert y.max() <= 3.0 + 0.6 + 1e-9
    walk = np.array([[5.1, 0.27], [4.5, 3.0]])
    along = walk[1] - walk[0]
    share = np.clip((np.stack([x, y], 1) - walk[0]) @ along / (along @ along), 0, 1)
    assert np.hypot(*(np.stack([x, y], 1) - walk[0] - share[:, None] * along).T).max() <= 0.6 + 1e-9
    # A strip of 1.2 m by 2.8 m with its round ends, less what the walls take.
    assert 2.5 < band.sum() * CELL_M**2 < 1.2 * 2.8 + np.pi * 0.36


def test_the_detector_of_the_hall_sees_all_of_it_whatever_the_doors_do() -> None:
    usual, low, high, ever = seen("shut", "hall-movement")
    whole = band_of(arrival_house().bare, CATALOGUE, CONTROLS)["ground"].sum() * CELL_M**2
    assert usual == low == high == ever == pytest.approx(whole)


def test_a_sliver_is_seen_through_the_kitchen_door_only_as_far_as_it_stands_open() -> None:
    assert seen("shut")[:3] == (0.0, 0.0, 0.0)
    usual, low, high, ever = seen("open")
    assert 0.1 < usual == low == high == ever < 1.0
    assert seen("shut")[3] == ever
    assert seen("ajar")[2] <= usual
    # Nobody has said how it stands: usually shut, at most open.
    assert seen(None) == (0.0, 0.0, usual, ever)


def test_it_is_said_which_door_is_looked_through() -> None:
    site = arrival_house(kitchen_door="open")
    found = seen_of_band(site.bare, CATALOGUE, KITCHEN, controls=CONTROLS)
    assert found.through == ("kitchen-door",)
    assert found.storey == "ground"
    assert found.cells["ground"].sum() * CELL_M**2 == pytest.approx(found.high)


def test_a_detector_that_looks_away_sees_nothing() -> None:
    away = KITCHEN.model_copy(update={"heading_deg": 60.0, "id": "away"})
    site = arrival_house(kitchen_door="open", also=(away,))
    assert seen_of_band(site.bare, CATALOGUE, away, controls=CONTROLS) == NOTHING_SEEN


def test_a_quarter_turn_and_another_order_change_nothing() -> None:
    site = arrival_house(kitchen_door=None)
    turned = quarter_turned(site)
    other = site.model_copy(
        update={
            name: tuple(reversed(getattr(site, name))) for name in ("walls", "openings", "spaces", "devices")
        }
    )
    for device in (KITCHEN, HALL):
        found = seen_of_band(site.bare, CATALOGUE, device, controls=CONTROLS)
        for again in (turned, other):
            there = seen_of_band(
                again.bare, CATALOGUE, again.device(device.id), controls=controls_of(again, CATALOGUE)
            )
            assert there[:4] == pytest.approx(found[:4], abs=1e-9)
            assert there.through == found.through


def test_doors_that_the_household_opens_hide_nothing_afterwards() -> None:
    beyond = KEYPAD.model_copy(
        update={"mount": WallMount(wall="kitchen-wall", side="left", offset_m=2.0, height_m=1.4)}
    )
    site = arrival_house(kitchen_door="shut", without=("keypad",), also=(beyond,))
    assert doors_passed(trips(site, CATALOGUE)) == {"kitchen-door"}
    found = seen_of_band(site.bare, CATALOGUE, KITCHEN, controls=(beyond,))
    assert found.low > 1.0
    assert not found.is_from_elsewhere


def test_a_landing_detector_may_see_the_way_in_down_the_stairs() -> None:
    site = read_sample("terrace-better")
    keypad = site.device("hall-keypad")
    # One that looks farther down than the sample's own, which is hung so that it does not.
    landing = site.device("landing-movement").model_copy(update={"sheet": "movement-12m", "tilt_deg": 0.0})
    near = seen_of_band(site.bare, CATALOGUE, landing, controls=(keypad,))
    mount = keypad.mount.model_copy(update={"offset_m": 3.0})
    deep = keypad.model_copy(update={"mount": mount})
    found = seen_of_band(site.bare, CATALOGUE, landing, controls=(deep,))
    # No leaf stands between: it is seen however doors stand, and no less the farther in the keypad is.
    assert 0.0 < near.high <= found.low == found.usual == found.high == found.ever
    assert (found.storey, found.is_down_stairs, found.is_from_elsewhere) == ("ground", True, True)
    assert found.through == ()


def test_a_detector_beside_the_door_has_the_way_in_behind_it() -> None:
    beside = on_wall("beside", "movement-12m", "kitchen-wall", 3.8, side="right", heading_deg=60.0)
    site = arrival_house(also=(beside,))
    assert seen_of_band(site.bare, CATALOGUE, beside, controls=CONTROLS).high < 0.5
