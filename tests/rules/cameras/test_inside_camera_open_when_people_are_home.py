"""CAM103: covered, open, undecided; and rooms where nobody expects to be looked at."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_wall, one_room
from common.mending import mended
from wardwright.model.site import Site
from wardwright.rules.cameras.inside_camera_open_when_people_are_home import (
    inside_camera_open_when_people_are_home as rule,
)
from wardwright.rules.registry import findings_of


def house(*, is_covered: bool | None, use: str = "living", sheet: str = "camera") -> Site:
    camera = on_wall("cam", sheet, "south", 2.5, is_covered_when_home=is_covered)
    room = one_room().spaces[0].model_copy(update={"use": use})
    return one_room(spaces=(room,), devices=(camera,))


def test_undecided_is_neither_passed_nor_found() -> None:
    (found,) = findings_of(rule, house(is_covered=None), CATALOGUE)
    assert (found.severity, found.subject) == ("not run", "cam")
    assert found.mends[0].action == "tell"


def test_open_is_advised_against() -> None:
    site = house(is_covered=False)
    (found,) = findings_of(rule, site, CATALOGUE)
    assert (found.severity, found.related) == ("advise", ("living",))
    assert "shut its own cover" in found.cure
    assert "consent" not in found.cure
    assert findings_of(rule, mended(site, found.mends[0]), CATALOGUE) == ()


def test_one_without_a_cover_loses_its_supply() -> None:
    (found,) = findings_of(rule, house(is_covered=False, sheet="camera-outside"), CATALOGUE)
    assert "cut its supply" in found.cure


@pytest.mark.parametrize("use", ["bedroom", "bathroom", "toilet"])
@pytest.mark.parametrize("is_covered", [None, False])
def test_a_private_room_asks_for_everybodys_consent(use: str, is_covered: bool | None) -> None:
    (found,) = findings_of(rule, house(is_covered=is_covered, use=use), CATALOGUE)
    assert found.severity == "advise"
    assert "where people sleep, wash or undress" in found.message
    assert "written consent of every adult" in found.cure
