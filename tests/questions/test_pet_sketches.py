"""What question 17 draws."""

from __future__ import annotations

import pytest
import shapely

from common.houses import CATALOGUE, one_room, pet
from common.rule_houses.movement import PASSING_PETS, SIDEBOARD
from wardwright.questions.pets_in import answers


def test_the_top_with_its_height_and_where_it_is_noticed() -> None:
    site = one_room(devices=(PASSING_PETS,), fixtures=(SIDEBOARD,), pets=(pet("cat"),))
    (answer,) = answers(site, CATALOGUE)
    perch, line, notice = answer.sketches
    assert (perch.role, perch.label) == ("perch", "1.4 m")
    assert shapely.Polygon(perch.rings[0]).area == pytest.approx(0.6)
    assert (line.role, len(line.points)) == ("pet-line", 2)
    assert (notice.role, notice.label) == ("notice", "cat on sideboard")
    assert shapely.Polygon(perch.rings[0]).buffer(1e-6).covers(shapely.Point(notice.points[0]))


def test_where_it_can_stay_only_the_tops_are_drawn() -> None:
    low = SIDEBOARD.model_copy(update={"height_m": 0.5})
    site = one_room(devices=(PASSING_PETS,), fixtures=(low,), pets=(pet("cat"),))
    (answer,) = answers(site, CATALOGUE)
    assert [sketch.role for sketch in answer.sketches] == ["perch"]
