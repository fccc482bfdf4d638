import numpy as np
import pytest

from common.radio_house import CATALOGUE, device, long_house
from wardwright.model.site import Site
from wardwright.physics.radio.from_site import radio_paths, radio_place
from wardwright.rules.radio_belief import (
    believed_of,
    house_radio,
    path_shadowing,
    read_devices,
    row_of,
    unknown_draws,
)

DEVICES = (
    device("near", "water-radio", 4.0),
    device("mid", "water-radio", 12.0),
    device("far", "water-radio", 20.0),
)
CLASSES = [row.id for row in CATALOGUE.wall_losses]


def read(*levels: tuple[str, float], **more: object) -> Site:
    readings = [
        {"id": f"r-{name}", "device": name, "receiver": "unit", "level_dbm": level, **more}
        for name, level in levels
    ]
    return long_house(*DEVICES, readings=readings)


def test_without_readings_it_is_what_the_catalogue_says() -> None:
    radio = house_radio(read(), CATALOGUE)
    offset = CATALOGUE.figure("radio-offset")
    assert radio.read == 0
    assert radio.belief.mean[:2].tolist() == [offset.value, offset.value]
    assert np.sqrt(radio.belief.spread[0, 0]) == pytest.approx((offset.high - offset.low) / 3.29, abs=0.01)
    assert not radio.belief.mean[2:].any()


def test_weak_readings_behind_more_walls_teach_offset_and_walls() -> None:
    radio = house_radio(read(("near", -60.0), ("mid", -85.0), ("far", -110.0)), CATALOGUE)
    concrete = 2 + CLASSES.index("concrete")
    assert radio.read == 3
    assert radio.belief.mean[0] > CATALOGUE.figure("radio-offset").value
    assert radio.belief.mean[concrete] > 0.0
    # What no path of the house meets is believed as before.
    assert radio.belief.mean[2 + CLASSES.index("coated")] == pytest.approx(0.0)
    assert (
        radio.belief.spread[concrete, concrete]
        < house_radio(read(), CATALOGUE).belief.spread[concrete, concrete]
    )


def test_only_the_offset_of_its_band_is_taught() -> None:
    radio = house_radio(read(("near", -60.0)), CATALOGUE)
    assert radio.belief.mean[1] == CATALOGUE.figure("radio-offset").value


def test_a_device_read_where_it_stands_has_little_shadow_left_and_a_carried_one_has() -> None:
    radio = house_radio(read(("near", -60.0)), CATALOGUE)
    place = radio.shadow_place("near|unit")
    assert place is not None
    assert np.sqrt(radio.belief.spread[place, place]) < CATALOGUE.figure("radio-shadowing").high
    carried = house_radio(read(("near", -60.0), held_at_m=(12.0, 2.0, 1.0)), CATALOGUE)
    assert carried.shadow_place("near|unit") is None
    assert carried.read == 1


def test_a_reading_of_a_silent_sheet_is_not_used() -> None:
    rows = tuple(
        row.model_copy(update={"radio": None}) if row.id == "water-radio" else row for row in CATALOGUE.sheets
    )
    silent = CATALOGUE.model_copy(update={"sheets": rows})
    assert house_radio(read(("near", -60.0)), silent).read == 0


def test_a_row_counts_walls_and_the_body_and_chooses_the_band() -> None:
    site = read()
    way = (radio_place(site, site.device("far")), radio_place(site, site.device("unit")))
    path = radio_paths(site, CATALOGUE, [way], frequency=868.65e6)[0]
    row = row_of(CATALOGUE, path, band_mhz=868.65, has_body=True)
    assert row[:2] == (1.0, 0.0)
    assert row[2 + CLASSES.index("concrete")] == pytest.approx(2.0)
    assert row[2 + CLASSES.index("body")] == 1.0


def test_an_unknown_wall_scatters_more() -> None:
    spreads = []
    for build in ("concrete", "unknown"):
        site = long_house(*DEVICES, build=build)
        way = (radio_place(site, site.device("far")), radio_place(site, site.device("unit")))
        path = radio_paths(site, CATALOGUE, [way], frequency=868.65e6)[0]
        spreads.append(path_shadowing(CATALOGUE, path))
    assert spreads == [6.0, 8.0]


def test_draws_follow_what_is_believed() -> None:
    radio = house_radio(read(("near", -60.0)), CATALOGUE)
    assert unknown_draws(radio).mean(axis=0) == pytest.approx(radio.belief.mean, abs=0.1)


def test_what_is_believed_has_the_likely_case_first() -> None:
    site = read(("near", -60.0))
    radio, found = house_radio(site, CATALOGUE), believed_of(site.bare, CATALOGUE, read_devices(site))
    assert found[0] == pytest.approx(radio.belief.mean)
    assert np.array_equal(found[1:], unknown_draws(radio))
