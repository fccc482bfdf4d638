"""CAM106: bedrooms and bathrooms."""

from __future__ import annotations

from common.houses import CATALOGUE, one_room
from common.mending import mended
from common.rule_houses.cameras import BEDROOM, INSIDE
from wardwright.rules.cameras.camera_in_a_private_space import camera_in_a_private_space as rule
from wardwright.rules.registry import findings_of


def test_in_a_bedroom() -> None:
    site = one_room(devices=(INSIDE,), spaces=BEDROOM)
    (found,) = findings_of(rule, site, CATALOGUE)
    assert found.message == "inside: it sees people in Bedroom"
    assert found.related == ("living",)
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


def test_one_that_is_open_when_people_are_in_is_still_found() -> None:
    camera = INSIDE.model_copy(update={"is_covered_when_home": False})
    assert len(findings_of(rule, one_room(devices=(camera,), spaces=BEDROOM), CATALOGUE)) == 1
