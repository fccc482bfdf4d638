from __future__ import annotations

import pytest

from common.cottage import add, read
from wardwright.errors import NotesError
from wardwright.intake.notes.house import FLOOR_THICKNESS_M


def test_the_place() -> None:
    place = read(
        "country gb\nrules us\nlatitude 51.5\nlongitude -0.1\nnorth 20 clockwise\nwarm-room 31 C\nusual-room 18"
    ).place
    assert (place.country, place.rule_pack, place.latitude_deg, place.longitude_deg) == (
        "GB",
        "us",
        51.5,
        -0.1,
    )
    assert (place.north_deg, place.warm_room_c, place.usual_room_c) == (-20, 31, 18)
    assert read("north 50 measured").place.basis_of("north_deg") == "measured"


def test_storeys_stand_over_one_another() -> None:
    site = read("storey second\nattic 1.8 x 2.0 above landing")
    assert [storey.elevation_m for storey in site.storeys] == pytest.approx(
        [0, 2.7, 2.7 + 2.3 + FLOOR_THICKNESS_M]
    )
    second = site.storey("second")
    assert (second.basis_of("elevation_m"), second.basis_of("height_m")) == ("guessed", "guessed")
    assert site.storey("first").basis_of("elevation_m") == "told"
    assert second.name == "Second floor"


def test_a_time_zone_is_told_by_its_name() -> None:
    assert read('time-zone "America/New_York"').place.time_zone == "America/New_York"


def test_a_floor_that_throws_the_sun_on() -> None:
    assert add("floor Hall glossy").space("hall").has_glossy_floor
    assert not add("floor Hall matt").space("hall").has_glossy_floor


def test_a_fact_about_a_room() -> None:
    site = add("use Hall study\nbelongs landing shared")
    assert (site.space("hall").use, site.space("hall").basis_of("use")) == ("study", "told")
    assert site.space("landing").belongs == "shared"


@pytest.mark.parametrize(
    ("line", "message"),
    [
        ("storey ground 2.4 high", "there is a 'ground' already"),
        ("storey third 24 high", "height_m cannot be so"),
        ("use hall ballroom", "'ballroom' is not a word for it"),
        ('time-zone "Europe/Atlantis"', "'Europe/Atlantis' is no time zone"),
        ("north up", "'up' stands where north should"),
        ("rules mars", "'mars' is not a set of rules"),
        ('house "A" "B"', "'B' is left over"),
    ],
)
def test_what_cannot_be_is_refused(line: str, message: str) -> None:
    with pytest.raises(NotesError, match=message):
        read(line)
