"""GLS102: the shorter reach through coverings."""

from __future__ import annotations

import math

import pytest

from common.houses import CATALOGUE, window
from common.rule_houses.glass import ear, heard, long_room
from wardwright.rules.glass.pane_behind_curtain_too_far import pane_behind_curtain_too_far as rule
from wardwright.rules.registry import findings_of


@pytest.mark.parametrize("covering", ["curtain", "blind", "shutter"])
def test_the_number_is_worked_by_hand(covering: str) -> None:
    """From (6, 0.04, 2) to (10.15, 2.6, 0.9)."""
    (found,) = findings_of(rule, heard(6.15, covering=covering), CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(math.sqrt(4.15**2 + 2.56**2 + 1.1**2))
    assert (found.limit, found.severity) == (3.0, "must mend")
    assert covering in found.message


def test_what_it_does_not_hear_bare_is_another_rules() -> None:
    assert findings_of(rule, heard(1.15, covering="curtain"), CATALOGUE) == ()


def test_a_covering_that_nobody_told_is_not_none() -> None:
    (found,) = findings_of(
        rule, long_room(openings=(window("pane", "east", 2.15),), devices=(ear(6.15),)), CATALOGUE
    )
    assert (found.severity, found.subject) == ("not run", "long room")
    assert found.message == "Nobody told whether pane has a curtain, blind or shutter"
