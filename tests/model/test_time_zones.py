"""Which time zone a place keeps."""

from __future__ import annotations

from wardwright.model.place import Place
from wardwright.model.time_zones import ONE_ZONE, is_time_zone, time_zone_of


def test_every_zone_of_the_table_is_known() -> None:
    assert all(is_time_zone(zone) for zone in ONE_ZONE.values())
    assert not is_time_zone("Europe/Atlantis")
    assert not is_time_zone("../secrets")


def test_what_is_told_goes_before_the_country() -> None:
    assert time_zone_of(Place(country="GB", time_zone="Europe/Paris")) == "Europe/Paris"
    assert time_zone_of(Place(country="DE")) == "Europe/Berlin"
    assert time_zone_of(Place(country="US")) is None
    assert time_zone_of(Place()) is None
