"""CON105: a contact for each leaf that turns."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_opening, one_room, opening
from common.rule_houses.contacts import with_doors
from wardwright.rules.contacts.second_leaf_without_contact import second_leaf_without_contact as rule
from wardwright.rules.registry import findings_of


def test_the_same_contact_again_is_the_mend() -> None:
    (found,) = findings_of(rule, with_doors("first"), CATALOGUE)
    assert found.estimate is not None
    assert (found.estimate.value, found.limit, found.subject) == (1.0, 2.0, "doors")
    assert found.mends[0].values == (("sheet", "contact"),)


@pytest.mark.parametrize("hinge", ["sliding", "fixed"])
def test_leaves_that_do_not_turn_are_left(hinge: str) -> None:
    doors = opening("doors", "south", 2.65, width_m=1.8, leaves=2, hinge=hinge)
    assert (
        findings_of(rule, one_room(openings=(doors,), devices=(on_opening("c", "doors"),)), CATALOGUE) == ()
    )


@pytest.mark.parametrize(("width_m", "severities"), [(1.39, []), (1.4, ["not run"])])
def test_a_wide_door_with_leaves_untold_cannot_be_run(width_m: float, severities: list[str]) -> None:
    door = opening("doors", "south", 2.65, width_m=width_m)
    found = findings_of(rule, one_room(openings=(door,), devices=(on_opening("c", "doors"),)), CATALOGUE)
    assert [one.severity for one in found] == severities
