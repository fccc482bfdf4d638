"""NAM103: from inside and from outside, words and letters, alone and in the middle."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_opening, two_rooms_and_hall, window, zone
from common.rule_houses.names import SOUTHERN, TWO_WINDOWS
from wardwright.model.programme import Programme
from wardwright.rules.finding import Finding
from wardwright.rules.names.left_or_right_without_convention import left_or_right_without_convention as rule
from wardwright.rules.registry import findings_of


def findings(name: str, seen_from: Any = "inside", **parts: Any) -> tuple[Finding, ...]:
    usual: dict[str, Any] = {"openings": TWO_WINDOWS, "devices": SOUTHERN}
    site = two_rooms_and_hall(
        **(usual | parts),
        zones=(zone(1, name, "southern"),),
        programme=Programme(left_and_right_from=seen_from),
    )
    return findings_of(rule, site, CATALOGUE)


@pytest.mark.parametrize(
    ("name", "seen_from", "better"),
    [
        ("Study window left", "inside", "Study window right"),
        ("Study window L", "inside", "Study window R"),
        ("LEFT study window", "inside", "RIGHT study window"),
        ("Study window Right", "outside", "Study window Left"),
    ],
)
def test_the_wrong_side_is_put_right(name: str, seen_from: str, better: str) -> None:
    """The southern of two windows in an east wall: on the right of whoever looks out, on the left from outside."""
    (found,) = findings(name, seen_from)
    assert found.severity == "advise"
    assert found.mends[0].values == (("name", better),)


@pytest.mark.parametrize(
    ("name", "seen_from"),
    [("Study window right", "inside"), ("Study window l", "outside"), ("Study window", "inside")],
)
def test_the_right_side_and_no_side_are_silent(name: str, seen_from: str) -> None:
    assert findings(name, seen_from) == ()


def test_alone_or_in_the_middle_it_is_not_known() -> None:
    alone = tuple(one for one in TWO_WINDOWS if one.id != "north-window")
    (found,) = findings("Study window left", openings=alone)
    assert (found.severity, found.subject) == ("not run", "zone-1")
    three = (*TWO_WINDOWS, window("third", "east", 3.15))
    middle = (on_opening("southern", "third"),)
    (found,) = findings("Study window left", openings=three, devices=middle)
    assert found.severity == "not run"
