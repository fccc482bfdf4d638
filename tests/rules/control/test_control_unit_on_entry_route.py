"""CTL101: beside or in view, hidden, with its own keypad, without a way."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_wall, open_edge, radiator, standing_free, two_rooms_and_hall
from common.rule_houses.control import KEYPAD, STUDY_FAN, STUDY_ZONE, UNIT_IN_HALL, UNIT_IN_STUDY
from wardwright.model.device import Device
from wardwright.model.site import Site
from wardwright.rules.control.control_unit_on_entry_route import control_unit_on_entry_route as rule
from wardwright.rules.finding import Finding
from wardwright.rules.registry import findings_of


def house(*devices: Device, **parts: object) -> Site:
    return two_rooms_and_hall(**({"devices": (*devices, STUDY_FAN), "zones": (STUDY_ZONE,)} | parts))


def only(site: Site) -> Finding:
    (found,) = findings_of(rule, site, CATALOGUE)
    return found


# The way runs from just inside the front door, at (5.1, 0.3), to the place before the keypad, (4.5, 1.0).
@pytest.mark.parametrize(("offset_m", "words"), [(1.0, "beside"), (2.0, "in view of"), (5.5, "in view of")])
def test_it_is_beside_the_way_or_in_view_of_it(offset_m: float, words: str) -> None:
    found = only(house(KEYPAD, on_wall("unit", "unit", "study-wall", offset_m, height_m=1.5)))
    assert f"it is {words} the way from front door to keypad" in found.message
    assert found.estimate is not None
    assert (found.limit is None) == (words != "beside")
    assert (found.estimate.value <= 1.5) == (words == "beside")
    assert (found.severity, found.related) == ("advise", ("front-door", "keypad"))


def test_the_distance_is_the_least_along_the_way() -> None:
    """The unit's middle is at (6.06, 1.0); the way's nearest place to it is its start at the door."""
    found = only(house(KEYPAD, on_wall("unit", "unit", "study-wall", 1.0, height_m=1.5)))
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(1.2, abs=0.1)


def test_furniture_that_hides_it_keeps_it_out_of_view() -> None:
    far = on_wall("unit", "unit", "study-wall", 5.5, height_m=1.5)
    cupboard = radiator(5.4, 4.8, heat="none", height_m=2.0).model_copy(update={"size_m": (1.3, 0.4)})
    low = cupboard.model_copy(update={"height_m": 0.8})
    assert findings_of(rule, house(KEYPAD, far, fixtures=(cupboard,)), CATALOGUE) == ()
    assert len(findings_of(rule, house(KEYPAD, far, fixtures=(low,)), CATALOGUE)) == 1


def test_a_room_open_to_the_hall_counts_as_the_hall() -> None:
    joined = (open_edge("hall", "study", ((6.15, 0.0), (6.15, 6.0))),)
    plan = house(KEYPAD, on_wall("unit", "unit", "east", 2.0, height_m=1.5))
    walls = tuple(wall for wall in plan.walls if wall.id != "study-wall")
    openings = tuple(opening for opening in plan.openings if opening.id != "study-door")
    opened = plan.model_copy(update={"open_edges": joined, "walls": walls, "openings": openings})
    assert findings_of(rule, plan, CATALOGUE) == ()
    assert "in view of" in only(opened).message


def test_a_unit_with_its_own_keypad_needs_a_separate_one_first() -> None:
    found = only(house(on_wall("unit", "unit-with-keypad", "study-wall", 1.0, height_m=1.5)))
    assert found.mends == ()
    assert found.cure.startswith("Fit a separate keypad")


def test_no_mend_without_a_watched_room() -> None:
    found = only(house(KEYPAD, UNIT_IN_HALL, zones=()))
    assert found.mends == ()
    assert found.cure.startswith("Watch another room")


def test_the_mend_keeps_the_unit_at_its_height_in_the_watched_room() -> None:
    values = dict(only(house(KEYPAD, UNIT_IN_HALL)).mends[0].values)
    assert values["height_m"] == 1.5
    assert (values["wall"], values["side"]) != ("study-wall", "left")


def test_a_keypad_that_cannot_be_reached_is_said() -> None:
    plan = house(on_wall("keypad", "keypad", "east", 3.0, height_m=1.3), UNIT_IN_HALL)
    shut_off = tuple(opening for opening in plan.openings if opening.id != "study-door")
    found = only(plan.model_copy(update={"openings": shut_off}))
    assert (found.severity, found.subject) == ("not run", "front-door")
    assert found.message == "no way was found from front door to keypad"


def test_a_unit_in_no_space_is_said() -> None:
    found = only(house(KEYPAD, standing_free("unit", "unit", 50.0, 50.0)))
    assert (found.severity, found.message) == ("not run", "unit: it stands in no space")


@pytest.mark.parametrize(
    ("site", "reason"),
    [
        (house(KEYPAD), "no control unit"),
        (house(UNIT_IN_STUDY), "no keypad"),
        (house(KEYPAD, UNIT_IN_STUDY, openings=()), "no opening is told to be an entry door"),
    ],
    ids=["no control unit", "no keypad", "no entry door"],
)
def test_what_is_missing_is_named(site: Site, reason: str) -> None:
    found = only(site)
    assert (found.severity, found.message) == ("not run", reason)
