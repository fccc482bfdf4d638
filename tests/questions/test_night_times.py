"""Times on a trip from bed, in every row."""

from __future__ import annotations

import pytest

from common.night_house import ANN
from wardwright.questions.night_times import Walked, night_cases, walked_s
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.night_rings import clock_of

CATALOGUE = load_catalogue()


def test_the_likely_row_is_the_trials_own_clock() -> None:
    walked = Walked(4.0, 3.0, 2.0)
    seconds = walked_s(CATALOGUE, ANN, walked)
    # 4 m at 1.3 m/s, 3 m of stairs at their share of it, two leaves.
    share, leaf = (CATALOGUE.figure(name).value for name in ("stairs-share", "pass-door"))
    assert seconds[0] == pytest.approx(4.0 / 1.3 + 3.0 / (1.3 * share) + 2.0 * leaf)
    assert seconds[0] == pytest.approx(clock_of(CATALOGUE, ANN, walked))


def test_draws_hang_on_the_person() -> None:
    other = ANN.model_copy(update={"id": "bob", "name": "Bob"})
    first, second = (walked_s(CATALOGUE, who, Walked(5.0, 0.0, 0.0)) for who in (ANN, other))
    assert first[0] == second[0]
    assert (first != second).any()
    assert night_cases(CATALOGUE, other).inputs[0].name == "pace of Bob"
