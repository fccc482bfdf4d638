"""SND105: beside a head, and for a pillow in the room."""

from __future__ import annotations

from common.houses import CATALOGUE, on_wall, two_rooms_and_hall
from common.rule_houses import HOUSES
from wardwright.rules.finding import Finding
from wardwright.rules.registry import findings_of
from wardwright.rules.sounders.ear_too_near_a_sounder import ear_too_near_a_sounder as rule


def findings(height_m: float, sheet: str = "sounder-shrill") -> tuple[Finding, ...]:
    device = on_wall("one", sheet, "study-wall", 1.15, side="right", height_m=height_m)
    return findings_of(rule, two_rooms_and_hall(devices=(device,)), CATALOGUE)


def test_a_shrill_one_at_head_height_is_named_with_its_level() -> None:
    (found,) = findings(1.7)
    assert found.subject == "one"
    assert found.estimate is not None
    assert found.estimate.value > 110.0
    assert "for somebody who stands by it, over 110 dBA" in found.message


def test_a_usual_one_is_not() -> None:
    assert findings(1.7, "sounder") == ()
    assert findings_of(rule, HOUSES["SND105"].silent, CATALOGUE) == ()


def test_higher_is_quieter_at_the_ear() -> None:
    low, high = (findings(height) for height in (1.7, 2.3))
    assert low[0].estimate is not None
    assert not high or (high[0].estimate is not None and high[0].estimate.value < low[0].estimate.value)
