"""CON102: which side is out, what turns, what was told."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_opening, one_room, opening, two_rooms_and_hall
from wardwright.model.site import Site
from wardwright.rules.contacts.electronics_on_leaf_of_outward_opening import (
    electronics_on_leaf_of_outward_opening as rule,
)
from wardwright.rules.registry import findings_of


def house(sheet: str = "contact", **facts: Any) -> Site:
    """A door in the south wall, whose left is the room; the contact's electronics are on its leaf."""
    return one_room(
        openings=(opening("door", "south", 2.65, **facts),),
        devices=(on_opening("on-leaf", "door", sheet, electronics_on="leaf"),),
    )


def severities(site: Site) -> list[str]:
    return [one.severity for one in findings_of(rule, site, CATALOGUE)]


@pytest.mark.parametrize(
    ("facts", "expected"),
    [
        ({"swing": "right"}, ["advise"]),
        ({"swing": "left"}, []),
        ({"swing": "none"}, []),
        ({"swing": "right", "hinge": "sliding"}, []),
        ({"swing": "right", "hinge": "top", "kind": "window"}, ["advise"]),
        ({}, ["not run"]),
    ],
)
def test_only_a_leaf_that_turns_outward_counts(facts: dict[str, Any], expected: list[str]) -> None:
    assert severities(house(**facts)) == expected


def test_a_sheet_for_outdoors_may_hang_in_the_rain() -> None:
    assert severities(house("contact-outdoors", swing="right")) == []


def test_an_inside_door_is_left_out() -> None:
    site = two_rooms_and_hall(devices=(on_opening("on-leaf", "kitchen-door", electronics_on="leaf"),))
    assert severities(site) == []


def test_a_terrace_that_is_drawn_is_outside() -> None:
    room = one_room().spaces[0]
    terrace = room.model_copy(
        update={"id": "terrace", "use": "terrace", "outline_m": ((0, -3), (5, -3), (5, -0.3), (0, -0.3))}
    )
    site = house(swing="right").model_copy(update={"spaces": (room, terrace)})
    assert severities(site) == ["advise"]


def test_a_guessed_swing_is_said_to_be_guessed() -> None:
    (found,) = findings_of(rule, house(swing="right", basis={"swing": "guessed"}), CATALOGUE)
    assert "as was guessed" in found.message
