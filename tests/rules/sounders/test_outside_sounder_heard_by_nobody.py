"""SND106: a far street, a near one, a boundary alone."""

from __future__ import annotations

from common.houses import CATALOGUE, two_rooms_and_hall
from common.rule_houses import HOUSES
from common.rule_houses.sounders import HIGH, TALL
from wardwright.model.site import Site
from wardwright.model.surroundings import Ground, GroundThing
from wardwright.rules.finding import Finding
from wardwright.rules.registry import findings_of
from wardwright.rules.sounders.outside_sounder_heard_by_nobody import outside_sounder_heard_by_nobody as rule


def findings(ground: Ground) -> tuple[Finding, ...]:
    site: Site = two_rooms_and_hall(devices=(HIGH,), storeys=(TALL,), ground=ground)
    return findings_of(rule, site, CATALOGUE)


def test_a_far_street_hears_too_little() -> None:
    (found,) = findings_of(rule, HOUSES["SND106"].fires, CATALOGUE)
    assert (found.subject, found.limit) == ("high", 60.0)
    assert found.estimate is not None
    assert found.estimate.value < 60.0
    assert "at the street" in found.message


def test_one_neighbour_near_by_is_enough() -> None:
    ring = ((0.0, -16.0), (5.0, -16.0), (5.0, -12.0), (0.0, -12.0))
    house = GroundThing(id="other", name="Number 2", kind="building", outline_m=ring, height_m=5.0)
    far = Ground(road_m=((-5.0, -400.0), (15.0, -400.0)), things=(house,))
    assert findings(far) == ()


def test_a_boundary_alone_tells_nothing_of_who_hears() -> None:
    ring = ((-5.0, -5.0), (15.0, -5.0), (15.0, 15.0), (-5.0, 15.0))
    (found,) = findings(Ground(boundary_m=ring))
    assert found.severity == "not run"
