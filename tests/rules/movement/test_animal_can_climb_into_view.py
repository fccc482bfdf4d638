"""MOV107: the worst animal and thing, and the place that looks over both."""

from __future__ import annotations

import math
from typing import Any

import pytest

from common.houses import CATALOGUE, on_wall, one_room, pet
from common.mending import mended
from common.rule_houses.movement import PASSING_PETS, SIDEBOARD
from wardwright.model.site import Site
from wardwright.rules.movement.animal_can_climb_into_view import animal_can_climb_into_view as rule
from wardwright.rules.registry import findings_of


def house(**parts: Any) -> Site:
    usual: dict[str, Any] = {"devices": (PASSING_PETS,), "fixtures": (SIDEBOARD,), "pets": (pet("cat"),)}
    return one_room(**(usual | parts))


def test_the_animals_top_is_held_against_the_lowest_zone_there() -> None:
    """1.4 m and 0.28 m of cat, against 2.2 m less 8 degrees of fall over 4.93 m to the far corner."""
    (found,) = findings_of(rule, house(), CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(1.68)
    assert found.limit == pytest.approx(2.2 - math.hypot(4.91, 0.45) * math.tan(math.radians(8.0)))
    assert (found.severity, found.related) == ("advise", ("cat", "sideboard"))
    assert "cat on sideboard" in found.message


def test_the_mend_looks_over_it() -> None:
    (found,) = findings_of(rule, house(), CATALOGUE)
    assert found.mends[0].action == "move-device"
    assert findings_of(rule, mended(house(), found.mends[0]), CATALOGUE) == ()


def test_a_detector_that_passes_no_animal_is_another_rules() -> None:
    plain = on_wall("plain", "fan", "west", 2.15)
    assert findings_of(rule, house(devices=(plain,)), CATALOGUE) == ()
    assert findings_of(rule, house(pets=(pet("cat", mass_kg=20.0),)), CATALOGUE) == ()


def test_no_mend_where_shelves_stand_all_round() -> None:
    """Cupboards of 2.0 m all over the room: from anywhere the far row passes close over one of them."""
    shelves = tuple(
        SIDEBOARD.model_copy(
            update={"id": f"shelf-{i}", "centre_m": centre, "size_m": size, "height_m": 2.0, "kind": "shelf"}
        )
        for i, (centre, size) in enumerate(
            [
                ((2.5, 0.3), (3.6, 0.5)),
                ((2.5, 3.7), (3.6, 0.5)),
                ((4.7, 2.0), (0.5, 3.8)),
                ((1.5, 2.0), (0.5, 1.0)),
            ]
        )
    )
    (found,) = findings_of(rule, house(fixtures=shelves), CATALOGUE)
    assert found.mends == ()
    assert found.cure.startswith("Move that out of its view")
