"""Where a detector would have no sun on it."""

from __future__ import annotations

from typing import Any

from common.houses import CATALOGUE, one_room, window
from common.mending import mended
from common.rule_houses.sunlight import FACING_SUNRISE, LOW, TALL_SOUTH
from wardwright.model.fabric import Storey
from wardwright.model.site import Site
from wardwright.rules.detector_spots import hung_at
from wardwright.rules.finding import Mend
from wardwright.rules.out_of_the_sun import out_of_the_sun
from wardwright.rules.sun_on_detectors import lens_minutes, norths_of, sun_on
from wardwright.rules.wall_spots import wall_spots


def mends(site: Site) -> tuple[Mend, ...]:
    (device,) = site.devices
    sheet = CATALOGUE.sheet(device.sheet).movement
    assert sheet is not None
    return out_of_the_sun(site, CATALOGUE, device, sheet=sheet, sun=sun_on(site, CATALOGUE, device))


def house(**parts: Any) -> Site:
    return one_room(**({"devices": (LOW,), "openings": (TALL_SOUTH,), "place": FACING_SUNRISE} | parts))


def test_a_little_higher_is_tried_before_anything_else() -> None:
    first, *rest = mends(house())
    assert (first.action, first.values) == ("change-mount", (("height_m", 2.3),))
    assert first.gain is not None
    assert first.gain.value == 0.0
    assert [one.action for one in rest] == ["change-covering"]


def test_under_glass_to_the_ceiling_it_is_turned_or_moved() -> None:
    tall = TALL_SOUTH.model_copy(update={"head_m": 2.6})
    site = house(
        openings=(tall,), storeys=(Storey(id="ground", name="ground", elevation_m=0.0, height_m=2.8),)
    )
    first = mends(site)[0]
    assert first.action in ("turn-device", "move-device")
    after = mended(site, first)
    (device,) = after.devices
    assert sun_on(after, CATALOGUE, device).lens.value <= 10.0


def test_where_no_place_is_dark_the_one_with_the_fewest_minutes_at_its_worst_north_is_told() -> None:
    glass = tuple(
        window(wall, wall, middle, width_m=width, sill_m=0.05, head_m=2.6)
        for wall, middle, width in (("south", 2.0, 3.0), ("east", 2.0, 3.0), ("west", 2.4, 2.0), ("north", 1.9, 2.5))
    )  # fmt: skip
    site = house(
        openings=glass,
        storeys=(Storey(id="ground", name="ground", elevation_m=0.0, height_m=2.8),),
        place=FACING_SUNRISE.model_copy(update={"north_deg": None}),
    )
    first = mends(site)[0]
    assert first.action == "move-device"
    assert first.gain is not None
    minutes = [
        lens_minutes(site, CATALOGUE, hung_at(LOW, spot, height_m=2.0))
        for spot in wall_spots(site, site.spaces[0], height_m=2.0)
    ]
    assert len(minutes) > 10
    assert first.gain.value == min(minutes) > 10.0


def test_fewer_norths_never_give_more_minutes() -> None:
    site = house(place=FACING_SUNRISE.model_copy(update={"north_deg": None}))
    norths, _ = norths_of(site)
    alone = [lens_minutes(site, CATALOGUE, LOW, norths=(north,)) for north in norths]
    assert max(alone) == lens_minutes(site, CATALOGUE, LOW) > min(alone)
