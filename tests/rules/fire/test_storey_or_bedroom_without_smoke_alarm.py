"""FIR102: one a storey; in America one a bedroom too."""

from __future__ import annotations

from common.houses import CATALOGUE
from common.mending import mended
from common.rule_houses.fire import US, hung, two_levels
from wardwright.rules.fire.storey_or_bedroom_without_smoke_alarm import (
    storey_or_bedroom_without_smoke_alarm as rule,
)
from wardwright.rules.registry import findings_of


def test_the_storey_is_named_and_gets_one_on_its_ceiling() -> None:
    site = two_levels(hung("smoke", "smoke", 2.5, 2.0))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert (found.subject, found.mends[0].subject) == ("upper", "above")
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


def test_in_america_the_bedroom_needs_its_own() -> None:
    found = findings_of(rule, two_levels(hung("smoke", "smoke", 2.5, 2.0), place=US), CATALOGUE)
    assert [one.subject for one in found] == ["above", "upper"]


def test_a_storey_of_loft_only_is_left() -> None:
    site = two_levels(hung("smoke", "smoke", 2.5, 2.0))
    ground, above = site.spaces
    loft = site.model_copy(update={"spaces": (ground, above.model_copy(update={"use": "loft"}))})
    assert findings_of(rule, loft, CATALOGUE) == ()
