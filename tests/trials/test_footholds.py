"""What stands outside to be climbed onto."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import one_room
from wardwright.model.fabric import Space, Stair, Storey
from wardwright.model.site import Site
from wardwright.model.surroundings import Ground, GroundThing
from wardwright.rules.footings import is_climbable
from wardwright.trials.footholds import Foothold, footholds


def thing(kind: Any = "shed", **facts: Any) -> GroundThing:
    usual: dict[str, Any] = {
        "id": "thing",
        "name": "thing",
        "kind": kind,
        "outline_m": ((6, 1), (7, 1), (7, 3), (6, 3)),
        "height_m": 2.0,
    }
    return GroundThing(**(usual | facts))


def by_name(site: Site) -> dict[str, Foothold]:
    return {one.name: one for one in footholds(site.bare)}


@pytest.mark.parametrize(
    ("kind", "facts", "expected"),
    [
        ("bin", {}, True),
        ("tree", {}, False),
        ("fence", {}, False),
        ("pipe", {"can_be_climbed": True}, True),
        ("shed", {"can_be_climbed": False}, False),
    ],
)
def test_what_is_told_comes_before_the_kind(kind: str, facts: dict[str, Any], expected: bool) -> None:
    assert is_climbable(thing(kind, **facts)) is expected


def test_only_what_is_told_to_be_climbed_is_climbed_at_any_height() -> None:
    assert not by_name(one_room(ground=Ground(things=(thing(),))))["thing"].is_climbed
    told = thing("tree", can_be_climbed=True)
    assert by_name(one_room(ground=Ground(things=(told,))))["thing"].is_climbed


UPPER = Storey(id="first", name="first floor", elevation_m=2.7)


def two_storeys(*more: Space, **parts: Any) -> Site:
    """The room of 5 m by 4 m, and a bedroom of 3 m by 4 m over its west part."""
    bedroom = Space(id="bedroom", name="Bedroom", storey="first", outline_m=((0, 0), (3, 0), (3, 4), (0, 4)))
    return one_room(
        storeys=(*one_room().storeys, UPPER), spaces=(*one_room().spaces, bedroom, *more), **parts
    )


def test_a_roof_of_the_house_stands_out_from_under_the_upper_storey() -> None:
    """From the bedroom's walls, 0.35 m about it, to the outside of the room's, less two corners of its walls."""
    roof = by_name(two_storeys())["roof over Living room"]
    assert roof.area is not None
    assert roof.area.area == pytest.approx(1.95 * 4.6 - 2 * 0.15**2)
    # Ceiling 2.4 m, 0.3 m of roof, 0.15 m down to the ground.
    assert roof.height_m == pytest.approx(2.85)
    assert (roof.is_climbed, roof.is_start, roof.basis) == (False, False, "default")


def test_one_storey_has_no_roof_to_stand_under_another() -> None:
    assert list(by_name(one_room())) == ["the ground"]


def balcony(belongs: Any = "ours") -> Space:
    return Space(
        id="deck", name="Deck", storey="first", use="balcony", belongs=belongs,
        outline_m=((3, 0), (5, 0), (5, 4), (3, 4)),
    )  # fmt: skip


def test_a_balcony_has_a_guard_and_a_shared_deck_is_walked_to() -> None:
    deck = by_name(two_storeys(balcony()))["Deck"]
    assert deck.height_m == pytest.approx(2.85)
    assert deck.edge_m == pytest.approx(2.85 + 0.9)
    assert not deck.is_start
    assert by_name(two_storeys(balcony("shared")))["Deck"].is_start


def test_a_stair_outside_is_climbed_and_one_inside_is_none() -> None:
    outside = Stair(id="out", name="outside stair", lower="ground", upper="first", line_m=((7, 0), (7, 4)))
    inside = Stair(id="in", name="inside stair", lower="ground", upper="first", line_m=((1, 1), (4, 1)))
    found = by_name(two_storeys(stairs=(outside, inside)))
    assert "inside stair" not in found
    assert found["outside stair"].is_climbed
