"""What would mend an entry time, tried on the model."""

from __future__ import annotations

import math

import pytest

from common.arrival_house import KEYPAD, arrival_house
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, WallMount
from wardwright.model.programme import Programme
from wardwright.model.revision import with_device
from wardwright.model.site import Site
from wardwright.questions.entry_and_exit_times import answers
from wardwright.rules.finding import Mend
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()
FAR = KEYPAD.model_copy(
    update={"mount": WallMount(wall="north", side="left", offset_m=5.25, height_m=1.4), "id": "keypad"}
)


def mends(site: Site, catalogue: Catalogue = CATALOGUE) -> dict[str, Mend]:
    (answer,) = answers(site, catalogue)
    return {mend.action: mend for mend in reversed(answer.mends)}


def verdict(site: Site) -> str:
    return answers(site, CATALOGUE)[0].verdict


def test_a_longer_time_is_computed_and_mends_it() -> None:
    site = arrival_house(programme=Programme(entry_time_s=15.0, exit_time_s=60.0))
    mend = mends(site)["change-programme"]
    ((name, value),) = mend.values
    assert name == "entry_time_s"
    assert verdict(site) == "bad"
    mended = site.programme.model_copy(update={name: value})
    assert verdict(site.model_copy(update={"programme": mended})) == "good"
    assert mend.gain is not None
    assert mend.gain.value == pytest.approx(float(value) - ((0.84 + math.hypot(0.6, 2.73)) / 0.64 + 14.0))


def test_a_time_longer_than_needed_is_shortened_since_it_is_an_intruders_too() -> None:
    site = arrival_house(programme=Programme(entry_time_s=45.0, exit_time_s=60.0))
    assert verdict(site) == "good"
    mend = mends(site)["change-programme"]
    assert dict(mend.values)["entry_time_s"] < 45.0
    assert mends(site).keys() == {"change-programme"}


def test_a_time_that_fits_is_left_alone() -> None:
    site = arrival_house(programme=Programme(entry_time_s=35.0, exit_time_s=60.0))
    assert mends(site) == {}


def test_a_keypad_nearer_to_the_door_is_named_with_what_it_brings() -> None:
    site = with_device(arrival_house(programme=Programme(entry_time_s=20.0, exit_time_s=60.0)), FAR)
    mend = mends(site)["move-device"]
    assert mend.subject == "keypad"
    values = dict(mend.values)
    there = FAR.model_copy(
        update={
            "mount": WallMount.model_validate(
                {name: values[name] for name in ("wall", "side", "offset_m", "height_m")}
            )
        }
    )
    again = with_device(site, there)
    (before,), (after,) = answers(site, CATALOGUE), answers(again, CATALOGUE)
    assert before.estimate is not None
    assert after.estimate is not None
    saved = (before.estimate.value - after.estimate.value) / 1.3
    assert saved > 1.0
    left = 20.0 - after.estimate.value / 1.3
    assert mend.gain is not None
    assert mend.gain.value == pytest.approx(left)


def test_it_is_never_put_behind_the_open_leaf() -> None:
    site = with_device(arrival_house(programme=Programme(entry_time_s=20.0, exit_time_s=60.0)), FAR)
    values = dict(mends(site)["move-device"].values)
    # The leaf hangs on the side of x = 4.65 and opens into the hall: it lies against nothing that is 0.9 m near it.
    place = {"kitchen-wall": (4.1, values["offset_m"]), "study-wall": (6.1, values["offset_m"])}
    assert values["wall"] in place or values["wall"] == "south"
    if values["wall"] in place:
        x, y = place[str(values["wall"])]
        assert math.hypot(x - 4.65, float(y) + 0.15) > 0.9


def test_a_unit_with_its_own_keypad_gets_a_keypad_beside_the_door_instead() -> None:
    unit = Device(
        id="unit", name="unit", sheet="control-unit-with-keypad",
        mount=WallMount(wall="north", side="left", offset_m=5.25, height_m=1.4),
    )  # fmt: skip
    site = arrival_house(
        without=("keypad", "unit"), also=(unit,), programme=Programme(entry_time_s=20.0, exit_time_s=60.0)
    )
    (answer,) = answers(site, CATALOGUE)
    added = [mend for mend in answer.mends if mend.action == "add-device"]
    assert [dict(mend.values)["sheet"] for mend in added] == ["keypad-radio", "keyfob-radio"]


def test_a_keyfob_needs_no_walk() -> None:
    site = arrival_house(programme=Programme(entry_time_s=15.0, exit_time_s=60.0))
    mend = mends(site)["add-device"]
    assert dict(mend.values) == {"sheet": "keyfob-radio"}
    assert mend.gain is not None
    assert mend.gain.value == pytest.approx(15.0 - 0.84 / 0.64 - 4.0)
    bare = CATALOGUE.model_copy(
        update={"sheets": tuple(one for one in CATALOGUE.sheets if one.kind != "keyfob")}
    )
    assert "add-device" not in mends(site, bare)
