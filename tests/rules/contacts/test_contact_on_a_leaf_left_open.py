"""CON104: how a leaf stands in each state in which its contact is active."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_opening, one_room, window, zone
from wardwright.model.programme import Programme
from wardwright.model.site import Site
from wardwright.rules.contacts.contact_on_a_leaf_left_open import contact_on_a_leaf_left_open as rule
from wardwright.rules.registry import findings_of


def house(*parts: str, rule_of_open: str = "refuse", **facts: Any) -> Site:
    return one_room(
        openings=(window("window", "north", 2.65, **facts),),
        devices=(on_opening("contact", "window"),),
        zones=(zone(1, "Living window", "contact", parts=parts),),
        programme=Programme(if_open_when_setting=rule_of_open),
    )


@pytest.mark.parametrize(
    ("parts", "habit", "night", "said"),
    [
        (("full",), "open", "shut", "open when the alarm is set"),
        (("full",), "shut", "ajar", None),
        (("night",), "open", "shut", None),
        (("night",), "shut", "ajar", "ajar when the alarm is part set"),
        (("full", "night"), "ajar", "ajar", "ajar when the alarm is set and ajar when the alarm is part set"),
    ],
)
def test_only_the_states_in_which_it_is_active_count(
    parts: tuple[str, ...], habit: str, night: str, said: str | None
) -> None:
    found = findings_of(rule, house(*parts, habit=habit, habit_night=night), CATALOGUE)
    assert [one.severity for one in found] == ([] if said is None else ["advise"])
    assert all(said is not None and said in one.message for one in found)


def test_what_setting_does_is_said() -> None:
    (refused,) = findings_of(rule, house("full", habit="open"), CATALOGUE)
    (left_out,) = findings_of(rule, house("full", rule_of_open="inhibit", habit="open"), CATALOGUE)
    assert refused.message.endswith("setting is then refused")
    assert left_out.message.endswith("it is then left out")


def test_leaves_of_which_nobody_told_are_named_together() -> None:
    (found,) = findings_of(rule, house("full"), CATALOGUE)
    assert (found.severity, found.subject) == ("not run", "one room")
    assert found.message == "Nobody told whether window is shut when the alarm is set"
