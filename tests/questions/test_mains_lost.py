"""Question 12, the mains lost: hours by hand, and what makes them longer."""

from __future__ import annotations

import pytest

from common.houses import on_floor, on_wall, one_room
from wardwright.model.device import Device
from wardwright.model.fixture import Outlet
from wardwright.model.needs import Needs
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.one_thing_lost import answers
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()
UNIT = on_wall("unit", "control-unit-radio", "south", 1.0, height_m=1.5)
ROUTER = Outlet(id="plug", name="Router", kind="router", storey="ground", at_m=(4.0, 3.0))
SOUNDER = on_wall("bell", "sounder-inside", "north", 2.0)
OUTSIDE = on_wall("outside-bell", "sounder-outside", "south", 2.0, side="right")


def sender(sheet: str) -> Device:
    return on_wall("sender", sheet, "south", 2.0, height_m=1.5)


def of(name: str, site: Site) -> Answer:
    return next(answer for answer in answers(site, CATALOGUE) if answer.subject_id == name)


def house(*devices: Device, **parts: object) -> Site:
    return one_room(devices=devices, **parts)


def test_mains_ends_the_message_when_it_ends_the_router() -> None:
    site = house(UNIT, sender("message-broadband"), outlets=(ROUTER,))
    answer = of("mains", site)
    assert answer.estimate is not None
    assert (answer.estimate.value, answer.verdict) == (0.0, "bad")
    parts = {part.name: part.estimate.value for part in answer.parts if part.estimate}
    assert parts["control unit goes on"] == pytest.approx((2.2 / 1.25 - 1.75 * 0.42 * 0.25) / 0.085)
    assert parts["message still leaves"] == 0.0
    assert [mend.action for mend in answer.mends] == ["replace-device"]


def test_a_back_up_for_the_router_lets_it_go_on() -> None:
    both = sender("message-both").model_copy(update={"id": "both"})
    box = on_floor("box", "router-with-back-up", 4.0, 3.0, 0.3)
    answer = of("mains", house(UNIT, both, box, outlets=(ROUTER,)))
    assert answer.estimate is not None
    assert answer.estimate.value == 14.0
    assert answer.verdict == "good"


def test_a_grade_that_asks_more_is_not_met() -> None:
    site = house(UNIT, sender("message-mobile"), needs=Needs(grade=3))
    answer = of("mains", site)
    assert answer.verdict == "bad"
    assert "held against 60 h" in answer.notes


def test_what_a_silent_sheet_holds_is_not_known() -> None:
    rows = tuple(one.model_copy(update={"standby": None}) for one in CATALOGUE.sheets)
    silent = CATALOGUE.model_copy(update={"sheets": rows})
    answer = next(one for one in answers(house(UNIT), silent) if one.subject_id == "mains")
    assert answer.reason == "not computable: the sheets are silent about the batteries of unit"
