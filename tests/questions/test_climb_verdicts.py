"""Whether an upper opening is out of reach, or noticed where it is not."""

from __future__ import annotations

from typing import Any

import pytest

from common.climb_house import box, house
from common.houses import CATALOGUE
from wardwright.model.device import Device, OpeningMount
from wardwright.model.programme import STANDARD_BEHAVIOURS
from wardwright.model.surroundings import Ground
from wardwright.questions.climb_verdicts import is_outside_told, judged, reach_estimate
from wardwright.store.catalogue import load_catalogue

ROOF = box("roof", 5.9, 2.0, 2.3)
INSTANT = STANDARD_BEHAVIOURS[0]
CONTACT = Device(id="c", name="c", sheet="contact", mount=OpeningMount(opening="window"))


def verdict(site: Any, *devices: Device) -> str:
    return judged(site.bare, CATALOGUE, site.openings[0], heard=tuple((one, INSTANT) for one in devices))


def test_out_of_reach() -> None:
    assert verdict(house()) == "good"


def test_where_nobody_has_said_what_stands_outside_nothing_is_passed() -> None:
    """Out of reach of all that is drawn, but nobody has looked; an empty list says that somebody has."""
    bare = house(ground=Ground())
    assert not is_outside_told(bare)
    assert verdict(bare) == "thin"
    assert is_outside_told(house(ground=Ground(things=())))
    assert verdict(house(ground=Ground(things=()))) == "good"


def test_reached_by_the_nimble_only() -> None:
    """A roof with a gap of 1.2 m: likely 1.0 m is got across, 1.5 m by few."""
    site = house(box("roof", 5.3 + 1.2 + 0.5, 2.0, 2.3))
    found = reach_estimate(site.bare, CATALOGUE, site.openings[0])
    assert found.value == pytest.approx(0.2)
    assert found.low < 0.0 < found.value < found.high
    assert found.drivers[0].name == "gap that a person gets across while climbing"
    assert verdict(site) == "thin"


def test_reached_and_noticed_or_not() -> None:
    """Its window opens and, where its pane is known, that breaks: a contact notices the one alone."""
    assert verdict(house(ROOF)) == "bad"
    assert verdict(house(ROOF), CONTACT) == "good"
    pane = house().openings[0].model_copy(update={"glazing": "double-plain"})
    site, catalogue = house(ROOF, openings=(pane,)).bare, load_catalogue()
    contact = CONTACT.model_copy(update={"sheet": "contact-radio"})
    assert judged(site, catalogue, pane, heard=((contact, INSTANT),)) == "thin"


def test_the_weakest_known_height_sets_the_basis() -> None:
    guessed = ROOF.model_copy(update={"basis": (("height_m", "guessed"),)})
    site = house(guessed)
    assert reach_estimate(site.bare, CATALOGUE, site.openings[0]).basis in ("guessed", "default")
