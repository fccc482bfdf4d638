"""CON101: numbers, mends and what is not known."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_opening, on_wall, one_room, opening
from wardwright.model.site import Site
from wardwright.rules.contacts.contact_gap_over_its_sheet import contact_gap_over_its_sheet as rule
from wardwright.rules.registry import findings_of


def house(gap_m: float | None) -> Site:
    return one_room(
        openings=(opening("door", "south", 2.65),), devices=(on_opening("contact", "door", gap_m=gap_m),)
    )


def test_the_finding_carries_gap_limit_and_half_of_the_limit_as_mend() -> None:
    (found,) = findings_of(rule, house(0.03), CATALOGUE)
    assert (found.severity, found.subject, found.related) == ("must mend", "contact", ("door",))
    assert found.estimate is not None
    assert (found.estimate.value, found.estimate.unit, found.limit) == (0.03, "m", 0.02)
    assert found.mends[0].values == (("gap_m", 0.01),)


@pytest.mark.parametrize(("gap_m", "count"), [(0.02, 0), (0.0200000001, 0), (0.0201, 1)])
def test_the_limit_itself_is_inside(gap_m: float, count: int) -> None:
    assert len(findings_of(rule, house(gap_m), CATALOGUE)) == count


def test_a_gap_that_was_not_measured_is_not_passed() -> None:
    (found,) = findings_of(rule, house(None), CATALOGUE)
    assert (found.severity, found.message) == ("not run", "contact: its gap was not measured")


def test_a_contact_on_no_opening_is_not_passed() -> None:
    site = house(0.01)
    stray = on_wall("stray", "contact", "south", 1.0)
    (found,) = findings_of(rule, site.model_copy(update={"devices": (*site.devices, stray)}), CATALOGUE)
    assert (found.severity, found.subject) == ("not run", "stray")


def test_no_contact_no_answer() -> None:
    (found,) = findings_of(rule, one_room(), CATALOGUE)
    assert (found.severity, found.subject, found.message) == ("not run", "one room", "no opening contact")
