from __future__ import annotations

import io

import pytest
import shapely

from common.dxf_plan import GAPS, Gap, Wish, written
from wardwright.intake.dxf.reading import read_dxf
from wardwright.model.placement import opening_footprint, wall_footprint
from wardwright.model.site import Site


def house(**changes: object) -> Site:
    return read_dxf(io.BytesIO(written(Wish(**changes))), where="t.dxf")[0]  # type: ignore[arg-type]


def test_a_wall_goes_on_through_its_openings() -> None:
    site = house()
    # Four outer walls and the three within.
    assert len(site.walls) == 7
    south = next(w for w in site.walls if w.thickness_m > 0.12 and {y for _, y in w.line_m} == {0.075})
    assert sorted(x for x, _ in south.line_m) == pytest.approx([0.0, 9.0], abs=1e-3)


def test_openings_lie_where_they_were_drawn() -> None:
    site = house()
    walls = {wall.id: wall for wall in site.walls}
    found = [shapely.Polygon(opening_footprint(walls[o.wall], o)) for o in site.openings]
    for gap in GAPS:
        box = shapely.box(*gap.box)
        assert min(box.symmetric_difference(one).area for one in found) < 0.002, gap


def test_the_front_door_is_the_likely_entry_door() -> None:
    site = house()
    (entry,) = [o for o in site.openings if o.is_entry_door]
    assert (entry.id, entry.basis_of("is_entry_door")) == ("hall-door", "guessed")
    closed = house(gaps=tuple(gap for gap in GAPS if gap.size != "3068"))
    assert not any(o.is_entry_door for o in closed.openings)


def test_glass_that_slides_to_the_outside_is_glass() -> None:
    door = house().opening("great-room-sliding-door")
    assert (door.glazing, door.basis_of("glazing")) == ("double-plain", "guessed")
    inside = Gap((4.0, 4.0, 4.1, 4.0 + 6 * 0.3048), "slide", "6068")
    doors = [o for o in house(gaps=(*GAPS, inside)).openings if o.hinge == "sliding" and o.kind == "door"]
    assert sorted(o.glazing is not None for o in doors) == [False, True]


def test_walls_stand_on_their_lines() -> None:
    for wall in house(turn_deg=20.0).walls:
        assert shapely.Polygon(wall_footprint(wall)).is_valid
