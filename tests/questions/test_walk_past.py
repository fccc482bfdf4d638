"""One walk past a movement detector."""

from __future__ import annotations

from typing import get_args

from wardwright.questions.walk_past import PACES, Pace
from wardwright.store.catalogue import load_catalogue


def test_every_pace_is_a_figure_and_they_grow() -> None:
    catalogue = load_catalogue()
    assert tuple(PACES) == get_args(Pace)
    values = [catalogue.figure(one).value for one in PACES.values()]
    assert values == sorted(values)
