"""MOV103: what counts as facing, what stands between, where to turn."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_ceiling, on_wall, one_room, opening, two_rooms_and_hall, window
from common.mending import mended
from wardwright.model.site import Site
from wardwright.rules.movement.movement_detector_facing_glass import movement_detector_facing_glass as rule
from wardwright.rules.registry import findings_of


def house(heading_deg: float = 90.0, **glass: Any) -> Site:
    """From (2.5, 0.04) a window of 0.6 m is straight ahead in the north wall, 4.11 m off; 90 degrees is north."""
    return one_room(
        devices=(on_wall("fan", "fan", "south", 2.65, heading_deg=heading_deg),),
        openings=(window("pane", "north", 2.65, width_m=0.6, **glass),),
    )


# The nearest middle of a tenth of the pane is 0.25 m off its own middle: atan(0.25 / 4.11) = 3.5 degrees.
@pytest.mark.parametrize(
    ("heading_deg", "off"),
    [(90.0, 0.7), (104.0, 10.5), (76.0, 10.5), (108.0, 14.5), (109.5, None), (70.0, None)],
)
def test_the_middle_third_is_15_degrees_each_side(heading_deg: float, off: float | None) -> None:
    found = findings_of(rule, house(heading_deg), CATALOGUE)
    if off is None:
        assert found == ()
    else:
        assert found[0].estimate is not None
        assert found[0].estimate.value == pytest.approx(off, abs=0.06)
        assert (found[0].limit, found[0].severity, found[0].related) == (15.0, "advise", ("pane",))


@pytest.mark.parametrize(
    "glass", [{"covering": "shutter"}, {"glazing": None}], ids=["behind a shutter", "not glazed"]
)
def test_what_is_no_bare_glass_is_left_out(glass: dict[str, Any]) -> None:
    assert findings_of(rule, house(**glass), CATALOGUE) == ()


def test_a_curtain_is_not_enough() -> None:
    assert len(findings_of(rule, house(covering="curtain"), CATALOGUE)) == 1


def test_the_smallest_turn_is_given() -> None:
    (found,) = findings_of(rule, house(), CATALOGUE)
    assert found.mends[0].action == "turn-device"
    # Beyond 15 + 3.5 degrees, in steps of 5 from straight off the wall.
    assert dict(found.mends[0].values)["heading_deg"] == 70.0
    assert findings_of(rule, mended(house(), found.mends[0]), CATALOGUE) == ()


def test_a_glass_wall_sends_it_to_another_place() -> None:
    site = one_room(
        devices=(on_wall("fan", "fan", "south", 2.65),),
        openings=(window("pane", "north", 2.65, width_m=5.0),),
    )
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.mends[0].action == "move-device"
    assert dict(found.mends[0].values)["wall"] in ("east", "west")
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


def test_no_mend_in_a_glass_house() -> None:
    panes = tuple(
        window(f"pane-{wall}", wall, size / 2 + 0.15, width_m=size)
        for wall, size in (("south", 5.0), ("north", 5.0), ("east", 4.0), ("west", 4.0))
    )
    site = one_room(devices=(on_wall("fan", "fan", "south", 2.65),), openings=panes)
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.mends == ()
    assert found.cure.startswith("Cover the glass")


@pytest.mark.parametrize(("habit", "count"), [("shut", 0), ("open", 1)])
def test_glass_behind_a_door_counts_when_the_door_stands_open(habit: str, count: int) -> None:
    """From the hall's west side, over the study's door at y = 4, to the window of the study."""
    plan = two_rooms_and_hall()
    openings = (
        opening("study-door", "study-wall", 4.0, habit=habit),
        window("study-window", "east", 4.15),
    )
    fan = on_wall("fan", "fan", "kitchen-wall", 4.0, side="right")
    site = plan.model_copy(update={"openings": openings, "devices": (fan,)})
    assert len(findings_of(rule, site, CATALOGUE)) == count


def test_glass_beyond_its_reach_is_left_out() -> None:
    site = two_rooms_and_hall(devices=(on_wall("fan", "fan", "study-wall", 3.0, side="right"),))
    short = CATALOGUE.sheet("fan")
    assert short.movement is not None
    near = short.model_copy(update={"movement": short.movement.model_copy(update={"reach_m": 3.9})})
    rest = tuple(sheet for sheet in CATALOGUE.sheets if sheet.id != "fan")
    assert len(findings_of(rule, site, CATALOGUE)) == 1
    assert findings_of(rule, site, CATALOGUE.model_copy(update={"sheets": (*rest, near)})) == ()


def test_one_that_looks_all_round_has_no_axis() -> None:
    site = house().model_copy(update={"devices": (on_ceiling("round", "round", 2.5, 2.0),)})
    assert findings_of(rule, site, CATALOGUE) == ()
