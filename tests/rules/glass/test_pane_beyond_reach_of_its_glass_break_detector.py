"""GLS101: distance in space to the farthest corner, plain sight, and a place that hears all it has to."""

from __future__ import annotations

import math

import pytest

from common.houses import CATALOGUE, on_wall, window
from common.mending import mended
from common.rule_houses.glass import ear, heard, long_room
from wardwright.model.fixture import Fixture
from wardwright.rules.glass.pane_beyond_reach_of_its_glass_break_detector import (
    pane_beyond_reach_of_its_glass_break_detector as rule,
)
from wardwright.rules.registry import findings_of


def test_the_number_is_worked_by_hand() -> None:
    """From (1, 0.04, 2) to (10.15, 2.6, 0.9)."""
    (found,) = findings_of(rule, heard(1.15), CATALOGUE)
    assert found.estimate is not None
    assert found.estimate.value == pytest.approx(math.sqrt(9.15**2 + 2.56**2 + 1.1**2))
    assert (found.limit, found.severity, found.subject) == (6.0, "must mend", "east-window")


def test_a_second_detector_that_hears_it_is_enough() -> None:
    far, near = ear(1.15), ear(8.15).model_copy(update={"id": "near"})
    site = long_room(devices=(far, near))
    assert findings_of(rule, site, CATALOGUE) == ()


def test_a_tall_cupboard_between_takes_it_out_of_sight() -> None:
    """From (8, 0.04) to the middle (10.15, 2): the line passes (9, 0.95); the detector is moved past the cupboard."""
    cupboard = Fixture(
        id="cupboard", name="cupboard", storey="ground", centre_m=(9.0, 0.95), size_m=(0.6, 0.6), height_m=2.2
    )
    site = long_room(devices=(ear(8.15),), fixtures=(cupboard,))
    (found,) = findings_of(rule, site, CATALOGUE)
    assert "not in its plain sight" in found.message
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


def test_a_pane_that_it_alone_hears_is_kept() -> None:
    """One window at each end, 10 m apart: no place hears both within 6 m of their farthest corners."""
    site = long_room(
        openings=(
            window("east-window", "east", 2.15, width_m=2.0),
            window("west-window", "west", 2.15, width_m=2.0),
        ),
        devices=(ear(1.15),),
    )
    (found,) = findings_of(rule, site, CATALOGUE)
    assert (found.subject, found.mends) == ("east-window", ())
    assert "Add a glass-break detector" in found.cure


def test_a_detector_in_no_space_cannot_be_run() -> None:
    outside = on_wall("ear", "ear", "south", 3.0, side="right", height_m=2.0)
    (found,) = findings_of(rule, long_room(devices=(outside,)), CATALOGUE)
    assert (found.severity, found.subject) == ("not run", "ear")
