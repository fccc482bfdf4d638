import numpy as np
import pytest

from wardwright.model.radio_rows import RadioLaw
from wardwright.physics.radio.distance_laws import LAWS, LawFigures, floor_factor
from wardwright.store.catalogue import load_catalogue

DISTANCES = np.array([2.0, 5.0, 20.0])


@pytest.mark.parametrize("row", load_catalogue().radio_laws, ids=lambda row: row.id)
def test_every_row_names_a_law_and_falls_with_distance(row: RadioLaw) -> None:
    figures = LawFigures(row.slope_db, row.at_one_db, row.by_frequency_db, row.floors_db, row.bend)
    losses = LAWS[row.law](DISTANCES, row.from_mhz * 1e6, walls=0.0, floors=0, figures=figures)
    assert (np.diff(losses) > 0.0).all()
    assert losses.shape == DISTANCES.shape


def test_walls_count_in_the_multi_wall_law_only() -> None:
    figures = LawFigures(floors=(18.3,))
    for name, law in LAWS.items():
        bare, walled = (law(10.0, 1e9, walls=w, floors=0, figures=figures) for w in (0.0, 7.0))
        assert float(walled - bare) == pytest.approx(7.0 if name == "cost-231" else 0.0)


def test_each_further_floor_takes_less_and_none_takes_nothing() -> None:
    factors = floor_factor(np.arange(6))
    assert factors[0] == 0.0
    assert (np.diff(factors)[1:] < np.diff(factors)[:-1]).all()


def test_beyond_its_table_of_floors_the_last_row_counts() -> None:
    figures = LawFigures(slope=33.0, floors=(9.0, 19.0, 24.0))
    three, nine = (LAWS["p1238-legacy"](10.0, 9e8, walls=0.0, floors=n, figures=figures) for n in (3, 9))
    assert float(three) == float(nine)
