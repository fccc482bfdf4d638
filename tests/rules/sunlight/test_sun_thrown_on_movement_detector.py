"""SUN103: floors and mirrors."""

from __future__ import annotations

from typing import Any

from common.houses import CATALOGUE, one_room
from common.rule_houses.sunlight import LONDON, LOOKING_WEST, POLISHED, SOUTH
from wardwright.model.fixture import Fixture
from wardwright.model.site import Site
from wardwright.rules.registry import findings_of
from wardwright.rules.sunlight.sun_thrown_on_movement_detector import sun_thrown_on_movement_detector as rule


def house(**parts: Any) -> Site:
    return one_room(**({"devices": (LOOKING_WEST,), "openings": (SOUTH,), "place": LONDON} | parts))


def mirror(x: float, y: float, turn_deg: float = 0.0) -> Fixture:
    return Fixture(
        id="mirror", name="Hall mirror", storey="ground", kind="mirror", centre_m=(x, y), size_m=(1.5, 0.03),
        turn_deg=turn_deg, base_m=0.5, height_m=1.85,
    )  # fmt: skip


def test_a_polished_floor_is_named_with_its_minutes() -> None:
    (found,) = findings_of(rule, house(spaces=POLISHED), CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value > 60.0
    assert found.message.endswith("is thrown on it by floor of Living room")


def test_a_mirror_opposite_the_window_throws_the_setting_sun_and_one_behind_the_detector_does_not() -> None:
    """Seen in the mirror, the lens looks back through the window to the west, where it faces 60 degrees off south."""
    place = LONDON.model_copy(update={"north_deg": 60.0})
    low = LOOKING_WEST.model_copy(
        update={
            "mount": LOOKING_WEST.mount.model_copy(update={"height_m": 2.0}),
            "heading_deg": 130.0,
        }
    )
    tall = SOUTH.model_copy(update={"head_m": 2.35})
    room = {"place": place, "devices": (low,), "openings": (tall,)}
    (found,) = findings_of(rule, house(fixtures=(mirror(4.1, 3.95),), **room), CATALOGUE)
    assert found.message.endswith("Hall mirror")
    assert findings_of(rule, house(fixtures=(mirror(4.97, 3.2, 90.0),), **room), CATALOGUE) == ()


def test_a_blind_keeps_it_out() -> None:
    covered = SOUTH.model_copy(update={"covering": "blind"})
    assert findings_of(rule, house(spaces=POLISHED, openings=(covered,)), CATALOGUE) == ()
