"""Places on a ceiling."""

from __future__ import annotations

import pytest

from common.houses import on_ceiling, one_room
from wardwright.rules.ceiling_spots import ceiling_spots, moved_on_ceiling


def test_they_keep_off_the_walls_and_begin_with_the_nearest() -> None:
    spots = ceiling_spots(one_room().spaces[0], nearest_to=(1.0, 1.0))
    # From 0.3 m off the walls in steps of 0.25 m: x to 4.55, y to 3.55.
    assert len(spots) == 18 * 14
    assert spots[0] == pytest.approx((1.05, 1.05))
    assert min(x for x, _ in spots) == pytest.approx(0.3)


def test_a_closet_has_none() -> None:
    narrow = one_room().spaces[0].model_copy(update={"outline_m": ((0, 0), (0.5, 0), (0.5, 2), (0, 2))})
    assert ceiling_spots(narrow, nearest_to=(0.0, 0.0)) == ()


def test_the_mend_names_the_place() -> None:
    mend = moved_on_ceiling(on_ceiling("round", "round", 1.0, 1.0), "ground", (2.0, 3.0))
    assert dict(mend.values) == {"on": "ceiling", "storey": "ground", "x_m": 2.0, "y_m": 3.0}
