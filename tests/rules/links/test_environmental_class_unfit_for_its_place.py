"""LNK103: outside, under shelter, unheated, and in the frame of a door."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_opening, on_wall, one_room, opening
from common.rule_houses.links import BETTER, GARAGE, OUTSIDE, PLAIN
from wardwright.rules.finding import Finding
from wardwright.rules.links.environmental_class_unfit_for_its_place import (
    environmental_class_unfit_for_its_place as rule,
)
from wardwright.rules.registry import findings_of

DOOR = opening("door", "south", 2.65)


def findings(*devices: Any, **parts: Any) -> tuple[Finding, ...]:
    return findings_of(rule, one_room(devices=devices, **parts), CATALOGUE)


def test_a_device_for_rooms_outside_must_be_mended() -> None:
    (found,) = findings(OUTSIDE)
    assert (found.severity, found.message) == ("must mend", "outside: it is outside, and is of class II")


def test_one_for_shelter_outside_is_to_be_checked() -> None:
    (found,) = findings(on_wall("better", "fan-better", "south", 2.0, side="right"))
    assert found.severity == "check with the standard"
    assert found.cure.endswith("or move it under shelter")


def test_an_unheated_room_wants_the_third_class() -> None:
    (found,) = findings(PLAIN, BETTER, spaces=GARAGE)
    assert (found.subject, found.severity) == ("plain", "check with the standard")
    assert found.mends[0].values == (("sheet", "fan-better"),)
    assert findings(PLAIN) == ()


@pytest.mark.parametrize(("spaces", "count"), [({}, 0), ({"spaces": GARAGE}, 1)])
def test_a_contact_in_a_frame_is_where_its_room_is(spaces: dict[str, Any], count: int) -> None:
    contact = on_opening("contact", "door", "contact-taped")
    assert len(findings(contact, openings=(DOOR,), **spaces)) == count


def test_a_class_that_its_sheet_does_not_name_is_said() -> None:
    (found,) = findings(on_wall("fan", "fan", "south", 1.0, side="right"))
    assert (found.severity, found.subject) == ("not run", "fan")
