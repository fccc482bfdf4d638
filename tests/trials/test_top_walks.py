"""Walks over what an animal stands on."""

from __future__ import annotations

import numpy as np
import pytest

from common.houses import one_room
from common.rule_houses.movement import SIDEBOARD
from wardwright.model.fabric import Stair, Storey
from wardwright.model.site import Site
from wardwright.rules.animal_tops import tops_of
from wardwright.rules.perches import UnderZones
from wardwright.trials.top_walks import POINTS_M, SHORT_M, STRETCH_M, WAYS, walks_over

EYE = np.array([0.04, 2.0, 2.2])


def under(house: Site, thing: str | None, place: tuple[float, float]) -> UnderZones:
    number = next(i for i, top in enumerate(tops_of(house)) if top.thing == thing)
    return UnderZones(number, 0.0, 1.0, place)


def test_over_a_floor_it_walks_there_and_back_along_and_across_the_line_to_the_detector() -> None:
    """From the middle of a room of 5 x 4 m: 2.5 m each way along, 2 m across, and between them to the walls."""
    house = one_room().bare
    laid, mine = walks_over(house, [(under(house, None, (2.5, 2.0)), EYE)])
    assert mine == [list(range(WAYS))]
    for walk, length in zip(laid, (5.0, 2 * np.hypot(2.0, 2.0), 4.0, 2 * np.hypot(2.0, 2.0)), strict=True):
        assert walk.stood == 0.0
        ahead = np.hypot(*np.diff(walk.points, axis=0).T)
        assert ahead == pytest.approx(POINTS_M)
        assert len(walk.points) == pytest.approx(2 * length / POINTS_M, abs=4)
        assert walk.points.tolist() == walk.points[::-1].tolist()


def test_it_does_not_walk_far_from_the_place() -> None:
    house = one_room().bare
    laid, _ = walks_over(house, [(under(house, None, (0.5, 2.0)), EYE)])
    assert laid[0].points[:, 0].max() == pytest.approx(0.5 + STRETCH_M, abs=POINTS_M)


def test_what_is_too_small_is_not_walked_on() -> None:
    """It is 0.149 m from corner to corner."""
    box = SIDEBOARD.model_copy(update={"size_m": (0.1, 0.11)})
    assert np.hypot(*box.size_m) < SHORT_M
    house = one_room(fixtures=(box,)).bare
    assert walks_over(house, [(under(house, box.id, box.centre_m), EYE)]) == ([], [[]])


def test_a_flight_is_laid_out_once_for_all_its_steps_and_all_that_watch() -> None:
    first = Storey(id="first", name="first floor", elevation_m=2.7)
    stair = Stair(id="stair", name="stairs", lower="ground", upper="first", line_m=((0.5, 2.0), (4.5, 2.0)))
    house = one_room(storeys=(*one_room().storeys, first), stairs=(stair,)).bare
    steps = [
        UnderZones(i, 0.0, 1.0, (1.0, 2.0)) for i, top in enumerate(tops_of(house)) if top.kind == "stair"
    ]
    floor = under(house, None, (2.5, 2.0))
    laid, mine = walks_over(house, [*((one, EYE) for one in steps[:3]), (steps[0], EYE + 1.0), (floor, EYE)])
    assert mine == [[0], [0], [0], [0], list(range(1, 1 + WAYS))]
    assert (np.diff(laid[0].stood) >= 0.0).all()
