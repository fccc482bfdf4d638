"""MOV104: the farthest floor in sight, who else watches it, and the better place."""

from __future__ import annotations

import math
from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, one_room
from common.mending import mended
from common.rule_houses.movement import LOOKING_EAST
from common.rule_houses.service import WORKTOP
from wardwright.model.site import Site
from wardwright.rules.ahead import ahead_of
from wardwright.rules.movement.movement_detector_reach_shorter_than_its_space import (
    movement_detector_reach_shorter_than_its_space as rule,
)
from wardwright.rules.registry import findings_of


def house(**parts: Any) -> Site:
    return one_room(**({"devices": (LOOKING_EAST,)} | parts))


def test_the_farthest_floor_in_sight_is_held_against_the_reach() -> None:
    """From (0.04, 2.0) the middle of the corner's cell is 4.91 m along and 1.95 m aside."""
    (found,) = findings_of(rule, house(), CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(math.hypot(4.91, 1.95))
    assert (found.limit, found.severity, found.related) == (4.8, "advise", ("living",))


def test_the_better_place_sees_nearly_as_much() -> None:
    (found,) = findings_of(rule, house(), CATALOGUE)
    site = mended(house(), found.mends[0])
    assert dict(found.mends[0].values)["wall"] in ("south", "north")
    assert findings_of(rule, site, CATALOGUE) == ()


def watched_m2(site: Site) -> float:
    table = CATALOGUE.sheet("fan-of-48-dm").movement
    assert table is not None
    ahead = ahead_of(site, site.devices[0], table)
    return 0.01 * float((ahead.distance(ahead.own_floor()) <= 4.8).sum())


def test_a_corner_behind_a_wardrobe_is_no_better_place() -> None:
    """From either corner of the west end nothing is too far off, because a wardrobe hides nearly all."""
    wardrobes = tuple(
        WORKTOP.model_copy(
            update={"id": f"wardrobe-{y}", "centre_m": (0.9, y), "size_m": (0.8, 0.8), "height_m": 2.35}
        )
        for y in (0.9, 3.1)
    )
    site = house(fixtures=wardrobes)
    (found,) = findings_of(rule, site, CATALOGUE)
    assert watched_m2(mended(site, found.mends[0])) >= 0.9 * watched_m2(site)


def test_what_another_watches_is_watched() -> None:
    """One in the south-east corner looks across the east end."""
    other = on_wall("other", "fan", "east", 0.4, heading_deg=120.0)
    corner = on_wall("more", "fan", "east", 3.9, heading_deg=240.0)
    found = findings_of(rule, house(devices=(LOOKING_EAST, other, corner)), CATALOGUE)
    assert "living-movement" not in {one.subject for one in found}


def test_a_far_end_that_is_hidden_is_another_matter() -> None:
    wide = WORKTOP.model_copy(update={"centre_m": (3.9, 2.0), "size_m": (0.2, 4.0), "height_m": 2.3})
    assert findings_of(rule, house(fixtures=(wide,)), CATALOGUE) == ()


def test_less_than_half_a_square_metre_is_nothing() -> None:
    """A room shortened to 4.7 m: beyond 4.8 m there are only two slivers in its corners."""
    room = one_room().spaces[0].model_copy(update={"outline_m": ((0, 0), (4.7, 0), (4.7, 4), (0, 4))})
    assert findings_of(rule, house(spaces=(room,)), CATALOGUE) == ()


def test_one_outside_stands_in_no_space() -> None:
    outside = on_wall("outside", "fan", "south", 2.0, side="right")
    (found,) = findings_of(rule, one_room(devices=(outside,)), CATALOGUE)
    assert (found.severity, found.subject) == ("not run", "outside")
