"""SND102: above the ground, above what is climbed, and the two figures that differ."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, two_rooms_and_hall
from common.rule_houses.sounders import HIGH, IN_KITCHEN, LOW, MIDDLING, SHED, TALL, WITH_SHED
from wardwright.model.surroundings import Ground
from wardwright.rules.finding import Finding
from wardwright.rules.registry import findings_of
from wardwright.rules.sounders.outside_sounder_within_reach import outside_sounder_within_reach as rule


def findings(*devices: Any, **parts: Any) -> tuple[Finding, ...]:
    return findings_of(rule, two_rooms_and_hall(devices=devices, **({"storeys": (TALL,)} | parts)), CATALOGUE)


@pytest.mark.parametrize(
    ("sounder", "above", "severity", "limit"),
    [(LOW, 2.65, "advise", 3.0), (MIDDLING, 3.35, "check with the standard", 4.0)],
)
def test_under_the_custom_it_is_advised_and_between_the_two_to_be_checked(
    sounder: Any, above: float, severity: str, limit: float
) -> None:
    """The ground is 0.15 m below the floor."""
    (found,) = findings(sounder)
    assert found.estimate is not None
    assert (found.estimate.value, found.limit, found.severity) == (pytest.approx(above), limit, severity)
    assert found.mends[0].values == (("height_m", pytest.approx(3.85)),)


def test_a_thing_that_is_climbed_counts_as_the_ground() -> None:
    """4.15 m above the ground, 2.15 m above the shed's roof."""
    assert findings(HIGH) == ()
    (found,) = findings(HIGH, ground=WITH_SHED)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(2.15)
    assert (found.related, found.severity) == (("shed",), "advise")
    assert findings(HIGH, ground=Ground(things=(SHED.model_copy(update={"can_be_climbed": False}),))) == ()


def test_a_wall_that_ends_below_gives_no_mend() -> None:
    (found,) = findings(LOW, storeys=(TALL.model_copy(update={"height_m": 2.8}),))
    assert found.mends == ()
    assert "its wall ends below" in found.cure


def test_inside_sounders_only_leave_it_not_run() -> None:
    (found,) = findings(IN_KITCHEN)
    assert (found.severity, found.message) == ("not run", "no outside sounder")
