"""Hours without mains, message paths, and who notices alone."""

from __future__ import annotations

import math

from common.houses import on_floor, on_opening, on_wall, two_rooms_and_hall, zone
from wardwright.model.fixture import Outlet
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.single_loss import (
    Hours,
    any_of,
    hours_of,
    message_hours,
    message_paths,
    no_longer_noticed,
    noticing,
    routers,
    together,
)

CATALOGUE = load_catalogue()
UNIT = on_wall("unit", "control-unit-radio", "study-wall", 1.0, side="right", height_m=1.5)
POINT = Outlet(id="plug", name="Router", kind="router", storey="ground", at_m=(8.0, 1.0))


def by(sheet: str):  # type: ignore[no-untyped-def] # noqa: ANN201 - a device in a test's shorthand
    return on_wall("sender", sheet, "study-wall", 1.5, side="right", height_m=1.5)


def test_cells_need_no_mains_and_a_silent_sheet_is_not_guessed() -> None:
    assert hours_of(on_wall("pir", "movement-12m", "north", 2.0), CATALOGUE, pack="uk-eu").low == math.inf
    assert hours_of(by("message-broadband"), CATALOGUE, pack="uk-eu") == Hours(0.0, 0.0)
    silent = CATALOGUE.model_copy(
        update={"sheets": tuple(one.model_copy(update={"standby": None}) for one in CATALOGUE.sheets)}
    )
    assert hours_of(UNIT, silent, pack="uk-eu").unknown == ("unit",)


def test_together_is_the_first_that_ends_and_any_the_last() -> None:
    short, long = Hours(2.0, 3.0), Hours(8.0, 9.0)
    assert together(short, long) == short
    assert any_of((short, long)) == long
    assert together(short, Hours(1.0, 9.0, ("x",))).unknown == ("x",)
    assert any_of((Hours(1.0, 9.0, ("x",)), short)) == short


def test_a_message_by_mobile_lasts_as_long_as_its_transmitter() -> None:
    site = two_rooms_and_hall(devices=(UNIT, by("message-mobile")), outlets=(POINT,))
    hours = message_hours(site, CATALOGUE, unit=UNIT)
    assert hours is not None
    assert hours.low == 14.0


def test_a_message_by_broadband_ends_with_the_router() -> None:
    sender = by("message-both")
    site = two_rooms_and_hall(devices=(UNIT, sender), outlets=(POINT,))
    assert [path.by for path in message_paths(site, CATALOGUE)] == ["broadband", "mobile"]
    only = two_rooms_and_hall(devices=(UNIT, by("message-broadband")), outlets=(POINT,))
    assert message_hours(only, CATALOGUE, unit=UNIT) == Hours(0.0, 0.0)
    assert message_hours(two_rooms_and_hall(devices=(UNIT,)), CATALOGUE, unit=UNIT) is None
    none = message_hours(site, CATALOGUE, unit=UNIT, but="sender")
    assert none is None


def test_a_router_drawn_twice_is_one() -> None:
    box = on_floor("box", "router-with-back-up", 8.2, 1.0, 0.3)
    site = two_rooms_and_hall(devices=(box,), outlets=(POINT,))
    assert [one.id for one in routers(site, CATALOGUE)] == ["box"]
    far = POINT.model_copy(update={"at_m": (1.0, 1.0)})
    assert [one.id for one in routers(site.model_copy(update={"outlets": (far,)}), CATALOGUE)] == [
        "box",
        "plug",
    ]


def test_the_front_door_is_noticed_by_its_contact_alone() -> None:
    contact = on_opening("front", "front-door").model_copy(update={"sheet": "contact-radio"})
    site = two_rooms_and_hall(devices=(UNIT, contact), zones=(zone(1, "Front door", "front"),))
    of = noticing(site, CATALOGUE)
    assert of is not None
    assert {way.opening.id for way in no_longer_noticed(of, "front")} == {"front-door"}
    assert no_longer_noticed(of, "unit") == ()


def test_without_a_control_unit_nobody_is_asked() -> None:
    assert noticing(two_rooms_and_hall(), CATALOGUE) is None
