"""Distances of siting rules held against values worked by hand; `prove` collects the rows."""

from __future__ import annotations

import math
from typing import Any

from common.houses import CATALOGUE
from common.rule_houses.fire import hung, under_a_ridge, with_bedroom, with_stove
from common.rule_houses.glass import heard
from wardwright.model.site import Site
from wardwright.rules.fire.alarm_off_the_apex_of_a_sloped_ceiling import (
    alarm_off_the_apex_of_a_sloped_ceiling,
)
from wardwright.rules.fire.co_alarm_at_the_wrong_distance_from_its_appliance import (
    co_alarm_at_the_wrong_distance_from_its_appliance,
)
from wardwright.rules.fire.heat_alarm_beyond_its_reach import heat_alarm_beyond_its_reach
from wardwright.rules.fire.smoke_alarm_far_from_a_room_door import smoke_alarm_far_from_a_room_door
from wardwright.rules.glass.pane_beyond_reach_of_its_glass_break_detector import (
    pane_beyond_reach_of_its_glass_break_detector,
)
from wardwright.rules.registry import Rule, findings_of

CASES: tuple[tuple[str, Rule, Site, float, str], ...] = (
    (
        "walk from a smoke alarm to a bedroom's door",
        smoke_alarm_far_from_a_room_door,
        with_bedroom(hung("smoke", "smoke", 1.0, 4.0)),
        5.15,
        "straight from x 1 to x 6.15 through two doors, derived by hand",
    ),
    (
        "heat alarm to the farthest corner of its room",
        heat_alarm_beyond_its_reach,
        with_bedroom(hung("heat", "heat", 0.5, 0.5)),
        math.hypot(3.5, 5.5),
        "hypot(3.5, 5.5), derived by hand",
    ),
    (
        "smoke alarm to the ridge of a sloped ceiling, level",
        alarm_off_the_apex_of_a_sloped_ceiling,
        under_a_ridge(hung("smoke", "smoke", 2.5, 0.5)),
        1.5,
        "ridge at y 2, alarm at y 0.5",
    ),
    (
        "CO alarm to a stove, level",
        co_alarm_at_the_wrong_distance_from_its_appliance,
        with_stove(hung("co", "co", 1.25, 2.0)),
        0.5,
        "the stove's edge at x 0.75, the alarm at x 1.25",
    ),
    (
        "glass-break detector to the farthest corner of a pane, in space",
        pane_beyond_reach_of_its_glass_break_detector,
        heard(1.15),
        math.sqrt(9.15**2 + 2.56**2 + 1.1**2),
        "sqrt(9.15^2 + 2.56^2 + 1.1^2), derived by hand",
    ),
)


def accuracy_rows() -> list[dict[str, Any]]:
    """The rows for docs/accuracy.md: a house for each distance."""
    return [
        {
            "quantity": f"{quantity} [m]",
            "source": source,
            "expected": expected,
            "computed": _number(rule, site),
            "tolerance": 1e-6,
            "why": "the way and the distance are exact; only rounding is left",
            "mark": "derived",
        }
        for quantity, rule, site, expected, source in CASES
    ]


def _number(rule: Rule, site: Site) -> float:
    found = [one.estimate.value for one in findings_of(rule, site, CATALOGUE) if one.estimate is not None]
    return found[0] if len(found) == 1 else math.nan
