"""Behaviours derived from the plan."""

from __future__ import annotations

import pytest

from common.arrival_house import KEYPAD, arrival_house
from common.houses import on_ceiling, on_opening, on_wall, standing_free, zone
from common.turning import quarter_turned
from wardwright.model.opening import LeafState
from wardwright.model.programme import Behaviour
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.trips import controls_of
from wardwright.trials.zone_roles import BY_KIND, derived, role_of, zone_hearing

CATALOGUE = load_catalogue()
EVERY_KIND = (
    on_wall("glass", "glass-break-acoustic", "east", 2.0),
    on_ceiling("smoke", "smoke-alarm-optical", 5.0, 3.0),
    standing_free("water", "water-detector-lead", 1.0, 1.0),
    on_wall("button", "hold-up-button-radio", "south", 4.4, height_m=1.2),
)


def roles(site: Site) -> dict[str, str]:
    return {one.device.id: one.role for one in derived(site, CATALOGUE, controls_of(site, CATALOGUE))}


def sheet_of(kind: str) -> str:
    return next(sheet.id for sheet in CATALOGUE.sheets if sheet.kind == kind)


def test_entry_door_hall_and_other_rooms_as_a_fitter_would() -> None:
    assert roles(arrival_house()) == {
        "front-contact": "entry-exit",
        "hall-movement": "entry-route",
        "kitchen-movement": "instant",
        # Nobody has said how the study door stands, and open it lets the way in be seen.
        "study-movement": "entry-route",
    }


@pytest.mark.parametrize(
    ("state", "role"), [("shut", "instant"), ("open", "entry-route"), (None, "entry-route")]
)
def test_a_room_detectors_role_hangs_on_the_habit_of_its_door(state: LeafState | None, role: str) -> None:
    assert roles(arrival_house(kitchen_door=state))["kitchen-movement"] == role


def test_contacts_by_whether_their_leaf_is_opened_on_the_way() -> None:
    beyond = KEYPAD.model_copy(update={"mount": KEYPAD.mount.model_copy(update={"side": "left"})})
    also = (
        beyond,
        on_opening("kitchen-contact", "kitchen-door", "contact-radio"),
        on_opening("window-contact", "kitchen-window", "contact-radio"),
        on_opening("front-shock", "front-door", sheet_of("shock-detector")),
        on_opening("window-shock", "kitchen-window", sheet_of("shock-detector")),
    )
    site = arrival_house(kitchen_door="shut", without=("keypad",), also=also)
    found = roles(site)
    assert found["kitchen-contact"] == "entry-route"
    assert found["window-contact"] == found["window-shock"] == "instant"
    assert found["front-shock"] == "entry-route"
    opened = {one.device.id: one.opened for one in derived(site, CATALOGUE, (beyond,))}
    assert opened["kitchen-contact"] == (1.0, 1.0, 1.0)
    unsaid = derived(arrival_house(kitchen_door=None, without=("keypad",), also=also), CATALOGUE, (beyond,))
    # It may be open when they come: then its contact tells nothing.
    assert {one.device.id: one.opened for one in unsaid}["kitchen-contact"] == (1.0, 0.0, 1.0)


def test_kinds_whose_role_no_plan_changes() -> None:
    for kind, role in BY_KIND.items():
        device = standing_free("thing", sheet_of(kind), 1.0, 1.0)
        assert roles(arrival_house(also=(device,)))["thing"] == role


def test_what_is_no_zone_is_left_out() -> None:
    found = roles(arrival_house())
    assert not {"keypad", "unit", "sounder"} & found.keys()


def test_the_order_of_lists_and_a_quarter_turn_change_nothing() -> None:
    site = arrival_house(kitchen_door=None)
    assert roles(quarter_turned(site)) == roles(site)
    names = ("devices", "openings", "walls", "spaces", "zones")
    other = site.model_copy(update={name: tuple(reversed(getattr(site, name))) for name in names})
    assert roles(other) == roles(site)


def test_a_behaviour_is_what_it_does_whatever_it_is_called() -> None:
    assert role_of(Behaviour(id="x", name="entry route", allowed_after_entry=True)) == "entry-route"
    assert role_of(Behaviour(id="x", name="anything", starts_entry=True)) == "entry-exit"
    assert role_of(Behaviour(id="x", name="anything", alarms=False)) == "log-only"
    assert role_of(Behaviour(id="x", name="instant", signal="fire")) == "fire"


def test_a_device_in_two_zones_is_heard_by_the_one_of_the_full_set() -> None:
    site = arrival_house()
    night = zone(0 + 1, "night", "hall-movement", parts=("night",)).model_copy(update={"id": "z-night"})
    both = site.model_copy(update={"zones": (night, *site.zones)})
    found = zone_hearing(both, "hall-movement")
    assert found is not None
    assert found.parts == ("full",)
    assert zone_hearing(both, "keypad") is None
