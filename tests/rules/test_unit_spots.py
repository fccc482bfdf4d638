"""Better places for the control unit."""

from __future__ import annotations

import math

from common.houses import CATALOGUE, two_rooms_and_hall
from common.mending import mended
from common.rule_houses.control import KEYPAD, STUDY_FAN, STUDY_ZONE, UNIT_IN_HALL
from wardwright.model.fixture import Outlet
from wardwright.model.placement import space_at, standing
from wardwright.model.site import Site
from wardwright.rules.unit_spots import moved_to_watched_spot


def house(**parts: object) -> Site:
    return two_rooms_and_hall(
        **({"devices": (KEYPAD, UNIT_IN_HALL, STUDY_FAN), "zones": (STUDY_ZONE,)} | parts)
    )


def spot_of(site: Site) -> tuple[str, float, float]:
    (mend,) = moved_to_watched_spot(site, CATALOGUE, UNIT_IN_HALL)
    place = standing(mended(site, mend), mended(site, mend).device("unit"))
    space = space_at(site, place.storey, (place.x_m, place.y_m))
    assert space is not None
    return space.id, place.x_m, place.y_m


def test_it_is_in_the_watched_room_nearest_to_where_it_was() -> None:
    room, x, y = spot_of(house())
    assert room == "study"
    assert math.dist((x, y), (6.06, 2.0)) < 1.5


def test_a_power_point_draws_it() -> None:
    power = Outlet(id="socket", name="socket", kind="power", storey="ground", at_m=(8.2, 5.9))
    room, x, y = spot_of(house(outlets=(power,)))
    assert room == "study"
    assert math.dist((x, y), power.at_m) < 1.0


def test_a_damp_room_or_none_gives_no_place() -> None:
    rooms = tuple(
        room.model_copy(update={"use": "bathroom"}) if room.id == "study" else room for room in house().spaces
    )
    assert moved_to_watched_spot(house(spaces=rooms), CATALOGUE, UNIT_IN_HALL) == ()
    assert moved_to_watched_spot(house(zones=()), CATALOGUE, UNIT_IN_HALL) == ()


def test_a_neighbours_room_is_not_taken() -> None:
    rooms = tuple(
        room.model_copy(update={"belongs": "neighbour"}) if room.id == "study" else room
        for room in house().spaces
    )
    assert moved_to_watched_spot(house(spaces=rooms), CATALOGUE, UNIT_IN_HALL) == ()
