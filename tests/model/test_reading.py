import pytest

from common.radio_house import CATALOGUE, device, long_house
from wardwright.errors import DocumentError
from wardwright.model.document import read_document, write_document
from wardwright.model.edits import Remove, edited
from wardwright.model.reading import Reading
from wardwright.model.site import Site
from wardwright.model.validation import sound

READ = {"id": "one", "device": "far", "receiver": "unit", "level_dbm": -71.0}


def house(**reading: object) -> Site:
    return long_house(device("far", "water-radio", 20.0), readings=[READ | reading])


def test_a_reading_is_written_and_read_back() -> None:
    site = house()
    assert read_document(write_document(site), where="x").readings == site.readings


def test_the_bare_house_has_none() -> None:
    assert house().bare.readings == ()
    assert house().bare is long_house(device("far", "water-radio", 20.0)).bare


@pytest.mark.parametrize("key", ["device", "receiver"])
def test_a_reading_of_nothing_is_refused(key: str) -> None:
    with pytest.raises(DocumentError, match="ghost"):
        sound(house(**{key: "ghost"}), where="x", catalogue=CATALOGUE)


@pytest.mark.parametrize("level", [-150.0, 30.0])
def test_a_level_that_no_receiver_shows_is_refused(level: float) -> None:
    with pytest.raises(ValueError, match="level_dbm"):
        Reading.model_validate(READ | {"level_dbm": level})


def test_with_a_device_its_readings_go() -> None:
    assert edited(house(), (Remove(of="devices", id="far"),)).readings == ()
