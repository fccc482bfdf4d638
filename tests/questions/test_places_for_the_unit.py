from __future__ import annotations

import pytest

from common.radio_house import CATALOGUE, device, long_house
from wardwright.errors import NotComputable
from wardwright.questions.places_for_the_unit import PLACES, places_for
from wardwright.store.samples import read_sample


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
