from __future__ import annotations

import math

import pytest

from common.radio_house import CATALOGUE, device, long_house
from wardwright.errors import NotComputable
from wardwright.model.placement import Standing
from wardwright.questions.places_for_the_unit import PLACES, Place, places_for
from wardwright.store.samples import read_sample

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


@pytest.mark.parametrize("name", ["terrace", "bungalow"])
def test_no_place_of_the_line_is_beaten_by_another_or_by_the_present(name: str) -> None:
    site = read_sample(name)
    unit = next(one for one in site.devices if one.id.endswith("control-unit"))
    found = places_for(site, CATALOGUE, unit)
    assert 1 <= len(found.line) <= PLACES
    for one in found.line:
        assert not any(other.beats(one) for other in (*found.line, found.present))
        assert one.spot is not None
        assert site.space(one.spot.space).use not in ("bathroom", "toilet", "loft")
    assert len({one.scores for one in found.line}) == len(found.line)


def test_without_a_radio_device_nothing_can_be_weighed() -> None:
    site = long_house()
    with pytest.raises(NotComputable, match="no radio device"):
        places_for(site, CATALOGUE, site.device("unit"))


def test_in_the_middle_the_worst_link_is_better() -> None:
    site = long_house(device("far", "water-radio", 23.0), device("near", "water-radio", 1.0))
    found = places_for(site, CATALOGUE, site.device("unit"))
    assert found.present.worst == "Far"
    assert max(one.margin_db for one in found.line) > found.present.margin_db + 6.0
