"""NAM102: the display's letters."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, two_rooms_and_hall, zone
from common.rule_houses.names import KITCHEN
from wardwright.rules.finding import Finding
from wardwright.rules.names.name_not_unique_after_cutting_to_display import (
    name_not_unique_after_cutting_to_display as rule,
)
from wardwright.rules.registry import findings_of


def findings(first: str, second: str, devices: Any = KITCHEN) -> tuple[Finding, ...]:
    zones = (zone(1, first, "kitchen-1"), zone(2, second, "kitchen-2"))
    return findings_of(rule, two_rooms_and_hall(devices=devices, zones=zones), CATALOGUE)


def test_names_that_differ_beyond_the_display_are_cut_to_one() -> None:
    """The display has 16 letters: `Kitchen movement`."""
    one, two = findings("Kitchen movement east", "kitchen  Movement west")
    assert (one.severity, one.related, two.related) == ("must mend", ("zone-2",), ("zone-1",))
    assert "the display cuts it to 'Kitchen movement', as zone 2" in one.message
    names = [str(dict(found.mends[0].values)["name"]) for found in (one, two)]
    assert len({name[:16].casefold() for name in names}) == 2


@pytest.mark.parametrize(
    ("first", "second"), [("Kitchen east", "Kitchen west"), ("Kitchen movement", "kitchen movement")]
)
def test_names_that_fit_or_are_one_in_full_are_not_its_business(first: str, second: str) -> None:
    assert findings(first, second) == ()


def test_without_a_unit_the_letters_are_not_known() -> None:
    (found,) = findings("a", "b", devices=KITCHEN[1:])
    assert (found.severity, found.cure) == ("not run", "Add the control unit")
