"""MOV101: distances on the plan, walls between, whose clearance."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_ceiling, on_wall, one_room, radiator, two_rooms_and_hall, window
from common.mending import mended
from wardwright.rules.movement.movement_detector_above_hot_thing import (
    movement_detector_above_hot_thing as rule,
)
from wardwright.rules.movement.movement_detector_facing_glass import movement_detector_facing_glass
from wardwright.rules.registry import findings_of


# The detector's middle is 0.04 m off the south wall, at x = 2.5.
@pytest.mark.parametrize(
    ("y", "distance"), [(0.5, 0.41), (1.0, 0.91), (1.08, 0.99)], ids=["close", "closer than 1 m", "just"]
)
def test_the_distance_is_to_the_outline(y: float, distance: float) -> None:
    site = one_room(devices=(on_wall("fan", "fan", "south", 2.65),), fixtures=(radiator(2.5, y),))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(distance)
    assert (found.limit, found.severity, found.related) == (1.0, "must mend", ("radiator",))


def test_beyond_the_clearance_or_cold_is_no_fault() -> None:
    fan = on_wall("fan", "fan", "south", 2.65)
    assert findings_of(rule, one_room(devices=(fan,), fixtures=(radiator(2.5, 1.1),)), CATALOGUE) == ()
    cold = radiator(2.5, 0.1, heat="none")
    assert findings_of(rule, one_room(devices=(fan,), fixtures=(cold,)), CATALOGUE) == ()


def test_a_radiator_behind_the_wall_is_no_fault() -> None:
    """The same 0.3 m away: once on the hall's side of the study's wall, once on its own."""
    fan = on_wall("fan", "fan", "study-wall", 2.0, side="right")
    ours = two_rooms_and_hall(devices=(fan,), fixtures=(radiator(6.9, 2.0),))
    behind = two_rooms_and_hall(devices=(fan,), fixtures=(radiator(5.4, 2.0),))
    assert len(findings_of(rule, ours, CATALOGUE)) == 1
    assert findings_of(rule, behind, CATALOGUE) == ()


def test_a_sheet_without_a_clearance_only_advises() -> None:
    site = one_room(
        devices=(on_wall("fan", "fan-silent-on-heat", "south", 2.65),), fixtures=(radiator(2.5, 0.1),)
    )
    (found,) = findings_of(rule, site, CATALOGUE)
    assert (found.severity, found.limit) == ("advise", 1.0)


def test_the_new_place_does_not_face_glass_either() -> None:
    site = one_room(
        devices=(on_wall("fan", "fan", "south", 2.65, heading_deg=45.0),),
        fixtures=(radiator(2.5, 0.1),),
        openings=(window("north-window", "north", 2.65, width_m=4.0), window("east-window", "east", 2.15)),
    )
    (found,) = findings_of(rule, site, CATALOGUE)
    after = mended(site, found.mends[0])
    assert findings_of(rule, after, CATALOGUE) == ()
    assert findings_of(movement_detector_facing_glass, after, CATALOGUE) == ()


def test_a_ceiling_detector_stays_on_the_ceiling() -> None:
    site = one_room(devices=(on_ceiling("round", "round", 2.5, 2.0),), fixtures=(radiator(2.5, 2.0),))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == 0.0
    assert dict(found.mends[0].values)["on"] == "ceiling"
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


def test_no_mend_where_the_room_has_no_clear_place() -> None:
    everywhere = radiator(2.5, 2.0).model_copy(update={"size_m": (4.9, 3.9)})
    site = one_room(devices=(on_wall("fan", "fan", "south", 2.65),), fixtures=(everywhere,))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.mends == ()
    assert "no place in it" in found.cure
