from __future__ import annotations

from datetime import date

from wardwright.documents.content.care_list import LIFE, UPDATES, care_list
from wardwright.model.edits import OPERATION, edited
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

SITE, CATALOGUE = read_sample("bungalow"), load_catalogue()
TODAY = date(2031, 1, 1)


def test_what_ends_stands_by_day_and_what_is_past_says_so() -> None:
    made = OPERATION.validate_python(
        {"do": "tell", "of": "devices", "id": "corridor-smoke", "facts": {"made_on": "2024-02-29"}}
    )
    found = care_list(edited(SITE, (made,)), CATALOGUE, today=TODAY)
    days = [one.on for one in found.dates]
    assert days == sorted(days)
    smoke = next(one for one in found.dates if one.device == "corridor-smoke")
    assert (smoke.what, smoke.on, smoke.is_past) == (LIFE, "2034-02-28", False)
    camera = next(one for one in found.dates if one.device == "front-camera")
    assert (camera.what, camera.is_past) == (UPDATES, True)
    assert "Corridor smoke" not in found.undated


def test_an_unknown_making_is_told_and_a_silent_sheet_is_no_promise() -> None:
    found = care_list(SITE, CATALOGUE, today=TODAY)
    assert set(found.undated) == {"Corridor smoke", "Kitchen heat", "Utility CO"}
    assert "Front door contact" in found.lasting
    told = {one.name for one in found.dates} | set(found.undated) | set(found.lasting)
    assert told == {device.name for device in SITE.devices}
