"""Whether an upper opening is out of reach, or noticed where it is not."""

from __future__ import annotations

from typing import Any

import pytest

from common.climb_house import box, house
from common.houses import CATALOGUE
from wardwright.model.device import Device, OpeningMount
from wardwright.model.programme import STANDARD_BEHAVIOURS
from wardwright.questions.climb_verdicts import judged, reach_estimate

ROOF = box("roof", 5.9, 2.0, 2.3)
INSTANT = STANDARD_BEHAVIOURS[0]
CONTACT = Device(id="c", name="c", sheet="contact", mount=OpeningMount(opening="window"))


def verdict(site: Any, *devices: Device) -> str:
    return judged(site.bare, CATALOGUE, site.openings[0], heard=tuple((one, INSTANT) for one in devices))


def test_out_of_reach() -> None:
    assert verdict(house()) == "good"


def test_reached_by_the_nimble_only() -> None:
    """A roof with a gap of 1.2 m: likely 1.0 m is got across, 1.5 m by few."""
    site = house(box("roof", 5.3 + 1.2 + 0.5, 2.0, 2.3))
    found = reach_estimate(site.bare, CATALOGUE, site.openings[0])
    assert found.value == pytest.approx(0.2)
    assert found.low < 0.0 < found.value < found.high
    assert found.drivers[0].name == "gap that a person gets across while climbing"
    assert verdict(site) == "thin"


def test_reached_and_noticed_or_not() -> None:
    """Its window opens and its pane breaks: a contact notices the one alone."""
    whole = house(ROOF)
    assert verdict(whole) == "bad"
    assert verdict(whole, CONTACT) == "good"
    pane = whole.openings[0].model_copy(update={"glazing": "double-plain"})
    assert verdict(whole.model_copy(update={"openings": (pane,)}), CONTACT) == "thin"


def test_the_weakest_known_height_sets_the_basis() -> None:
    guessed = ROOF.model_copy(update={"basis": (("height_m", "guessed"),)})
    site = house(guessed)
    assert reach_estimate(site.bare, CATALOGUE, site.openings[0]).basis in ("guessed", "default")
