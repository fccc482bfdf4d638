from __future__ import annotations

import pytest

from common.radio_house import CATALOGUE, device, long_house
from wardwright.rules.likely_margins import likely_margins, margins_of
from wardwright.rules.radio_links import links_of

SITE = long_house(device("far", "water-radio", 23.0), device("mid", "keypad-radio", 12.0))
LINKS = [links_of(SITE, CATALOGUE, SITE.device(name))[0].weakest for name in ("far", "mid")]
TOLD = [one.margin.value for one in LINKS]


def test_likely_margins_agree_with_the_links_own() -> None:
    margins = [
        likely_margins(
            SITE.bare, CATALOGUE, one.hop, ways=[(one.hop.sender.place, one.hop.receiver.place)], readings=()
        )[0]
        for one in LINKS
    ]
    assert margins == pytest.approx(TOLD)


def test_many_hops_at_once_are_each_as_alone_in_any_order() -> None:
    hops = [one.hop for one in LINKS]
    elsewhere = hops[0]._replace(frequency_mhz=433.0)
    margins = margins_of(SITE.bare, CATALOGUE, [*hops, elsewhere, hops[0]], readings=())
    assert margins[:2] == pytest.approx(TOLD)
    assert margins[3] == margins[0] != margins[2]
    alone = margins_of(SITE.bare, CATALOGUE, [elsewhere], readings=())
    assert margins[2] == pytest.approx(alone[0])
    assert margins_of(SITE.bare, CATALOGUE, hops[::-1], readings=()) == pytest.approx(TOLD[::-1])
