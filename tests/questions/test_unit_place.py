from __future__ import annotations

import math

from wardwright.model.placement import Standing
from wardwright.questions.unit_place import Place

AT = Standing("g", 0.0, 0.0, 1.5, 0.0)


def place(*, margin: float = 30.0, reached: float = 5.0, seen: int = 0, power: float = 0.5) -> Place:
    return Place(None, "Room", AT, margin, "far", reached, seen, is_on_route=False, power_m=power)


def test_a_place_beats_another_only_where_it_is_worse_in_nothing() -> None:
    assert place(reached=9.0).beats(place())
    assert not place(reached=9.0, seen=1).beats(place())
    assert not place().beats(place())
    assert not place(margin=31.0).beats(place())  # a decibel more is none
    assert place(power=0.2).beats(place(power=math.inf))


def test_more_margin_than_enough_is_of_no_use() -> None:
    assert not place(margin=90.0).beats(place(margin=60.0))
