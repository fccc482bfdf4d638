"""Lives of cells over all that is not known: which inputs there are, and how a margin comes in."""

from __future__ import annotations

import pytest

from common.houses import on_wall, one_room
from wardwright.model.device import WallMount
from wardwright.physics.power.from_site import on_cells
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.cell_lives import Margin, capacity_of, lasting, lasting_in, setting_of

CATALOGUE = load_catalogue()


def life(sheet: str, margin: Margin | None = None):  # type: ignore[no-untyped-def] # noqa: ANN201 - as lasting gives it
    site = one_room(devices=(on_wall("one", sheet, "south", 2.0),))
    one = on_cells(site.devices[0], CATALOGUE)
    assert one is not None
    return lasting(site, CATALOGUE, one, margin=margin)


def test_a_coin_cell_that_is_drawn_from_hard_may_hold_less() -> None:
    coin = capacity_of(life("hold-up-radio").one)
    assert (coin.value, coin.low, coin.high) == pytest.approx((0.225, 0.155, 0.235))


def test_a_poor_link_costs_life_and_a_good_one_is_as_good_as_a_wire() -> None:
    poor, good = (
        life("movement-12m", Margin(-4.0, -10.0, 2.0)),
        life("movement-12m", Margin(30.0, 24.0, 36.0)),
    )
    assert poor.years[0] < 0.8 * good.years[0]
    sends = next(one for one in good.cases.inputs if one.name.startswith("sendings"))
    assert (sends.figure.low, sends.figure.value, sends.figure.high) == pytest.approx((1.0, 1.0, 1.0))


def test_drivers_are_named_in_trade_words() -> None:
    names = [one.name for one in life("movement-12m").cases.inputs]
    assert names == [
        "what the cell holds",
        "what the cell loses by itself",
        "share of the cell that can be used",
        "what the device draws",
        "temperature of the cell",
        "sendings until a message is heard",
        "activations in a day",
    ]


def test_a_keypad_that_moves_leaves_a_contact_in_its_setting() -> None:
    site = read_sample("terrace")
    pad = site.device("hall-keypad")
    assert isinstance(pad.mount, WallMount)
    beside = pad.mount.model_copy(update={"offset_m": pad.mount.offset_m + 0.05})
    after = site.model_copy(
        update={
            "devices": tuple(
                one.model_copy(update={"mount": beside}) if one.id == pad.id else one for one in site.devices
            )
        }
    )
    for device in site.devices:
        one = on_cells(device, CATALOGUE)
        if one is not None and device.id != pad.id:
            setting = setting_of(after, CATALOGUE, device)
            assert setting == setting_of(site, CATALOGUE, device)
            assert lasting(after, CATALOGUE, one) is lasting_in(CATALOGUE, one, setting, margin=None)
