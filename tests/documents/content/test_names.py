from __future__ import annotations

import pytest

from wardwright.documents.content.names import Names, names_of
from wardwright.model.catalogue import Catalogue
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.site import Site


def test_every_thing_of_a_site_has_a_name(site: Site) -> None:
    names = names_of(site)
    assert names.of("front-door") == "front door"
    assert names.of("zone-1") == "zone 1 (Front door)"
    assert names.of("g-hall") == "wall g-hall"
    assert names.of("not-there") == "not-there"


def test_a_sheet_can_stand_in_a_sentence(site: Site) -> None:
    row = DeviceSheet(
        id="md", name="movement detector, 12 m", source="own", mark="assumption", kind="movement-detector"
    )
    assert names_of(site, Catalogue(sheets=(row,))).of("md") == "movement detector (12 m)"


@pytest.mark.parametrize(
    ("wall", "side", "offset", "words"),
    [
        (
            "g-hall",
            "left",
            1.0,
            "in Hall, on its wall to Living room, 1.0 m from the wall\u2019s lower end on the plan",
        ),
        (
            "g-south",
            "left",
            3.0,
            "in Living room, on its outer wall, 3.0 m from the wall\u2019s left end on the plan",
        ),
        (
            "g-south",
            "right",
            3.0,
            "outside, on the wall of Living room, 3.0 m from the wall\u2019s left end on the plan",
        ),
        (
            "g-north",
            "left",
            1.0,
            "in Kitchen, on its outer wall, 1.0 m from the wall\u2019s right end on the plan",
        ),
        (
            "g-west",
            "left",
            1.0,
            "in Kitchen, on its outer wall, 1.0 m from the wall\u2019s upper end on the plan",
        ),
        ("gone", "left", 1.0, "on the left of wall gone, 1.0 m along it"),
    ],
)
def test_a_place_on_a_wall_is_said_with_the_plan_in_hand(
    wall: str, side: str, offset: float, words: str, site: Site
) -> None:
    assert names_of(site).wall_place(wall, side=side, offset_m=offset) == words


def test_without_a_site_a_wall_is_its_id() -> None:
    assert Names().wall_place("w", side="right", offset_m=2.0) == "on the right of wall w, 2.0 m along it"
