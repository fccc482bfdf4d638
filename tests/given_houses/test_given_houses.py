"""Every given house, brought in without a hand edit: what is true of all of them."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
import shapely

from common.given_houses import HOUSES, Brought, GivenHouse
from common.house_checks import loose_doors, not_closed, not_on_foot
from wardwright.model.document import read_document, write_document
from wardwright.model.placement import is_way_in, sides_of_opening, wall_footprint
from wardwright.model.site import Site
from wardwright.model.validation import problems
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.ways_in import ways_in

pytestmark = [pytest.mark.given_data, pytest.mark.parametrize("house", HOUSES, ids=[h.name for h in HOUSES])]

KEPT: dict[str, Brought] = {}


@pytest.fixture
def brought(given: Callable[[str], Path], house: GivenHouse) -> Brought:
    path = given(house.file)
    if house.name not in KEPT:
        KEPT[house.name] = house.brought(path)
    return KEPT[house.name]


def test_nothing_in_it_stops_an_answer(brought: Brought, house: GivenHouse) -> None:
    found = problems(brought.site, load_catalogue())
    assert [p for p in found if p.weight == "stops"] == []
    # Homes drawn by hand have walls that lie upon one another; nothing else is noted of any house.
    assert {p.what.partition(" '")[0] for p in found} <= {"it stands where the wall"}
    assert not found or house.name.startswith("home")


def test_every_room_of_ours_is_bounded(brought: Brought) -> None:
    assert not_closed(brought.site) == {}


def test_every_room_of_ours_is_reached_on_foot(brought: Brought) -> None:
    assert not_on_foot(brought.site) == []


def test_doors_join_rooms_or_lead_outside(brought: Brought) -> None:
    site = brought.site
    assert loose_doors(site) == []
    for opening in site.openings:
        left, right = sides_of_opening(site, opening)
        assert left != right, opening.id


def test_somebody_can_come_in(brought: Brought) -> None:
    site = brought.site
    ways, not_counted = ways_in(site, load_catalogue())
    assert {way.opening.id for way in ways} | {one.opening.id for one in not_counted} == {
        o.id for o in site.openings if is_way_in(site, o)
    }
    assert any(way.opening.kind == "door" for way in ways)
    assert any(way.manner == "through the glass" for way in ways)


def test_rooms_do_not_lie_in_walls(brought: Brought) -> None:
    """What the README found with the meshes of the building files: no room overlaps a wall by more than 0.03 m2."""
    site = brought.site
    for storey in site.storeys:
        walls = standing_walls(site, storey.id)
        for space in site.spaces:
            if space.storey == storey.id:
                within = shapely.Polygon(space.outline_m).buffer(-0.02).intersection(walls).area
                assert within < max(0.05, 0.03 * shapely.Polygon(space.outline_m).area), space.id


def standing_walls(site: Site, storey_id: str) -> shapely.Geometry:
    walls = [w for w in site.walls if w.storey == storey_id and w.base_m < 0.5]
    return shapely.union_all([shapely.Polygon(wall_footprint(w)).buffer(0) for w in walls])


def test_every_fact_says_how_it_is_known(brought: Brought) -> None:
    """Nothing that an intake writes counts as told by the user: it is measured on the drawing or guessed."""
    site = brought.site
    for records in (
        site.storeys,
        site.spaces,
        site.walls,
        site.openings,
        site.open_edges,
        site.stairs,
        site.fixtures,
    ):
        for record in records:
            for field in record.model_fields_set - {"basis", "belongs"}:  # whose it is, --premises tells
                assert record.basis_of(field) in ("measured", "guessed"), (record.id, field)


def test_the_document_is_read_again(brought: Brought) -> None:
    assert read_document(write_document(brought.site), where="again") == brought.site
