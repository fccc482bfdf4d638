"""What light from above falls on."""

from __future__ import annotations

import numpy as np

from wardwright.model.floor_tops import tops_of
from wardwright.model.surfaces import level_of
from wardwright.store.samples import read_sample


def test_floor_is_at_its_level_and_a_table_at_its_top() -> None:
    level = level_of(read_sample("terrace"), "ground")
    places = tops_of(level, 0.1)
    heights = set(places[:, 2].round(3).tolist())
    assert 0.0 in heights
    assert {0.75, 0.9} <= heights  # table, worktop
    assert np.count_nonzero(places[:, 2] == 0.0) > 0.5 * len(places)
