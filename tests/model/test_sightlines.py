from typing import Any

import numpy as np
import pytest

from wardwright.model.fabric import Space, Stair, Storey, Wall
from wardwright.model.sightlines import (
    LEAVES,
    blockers_about,
    blockers_on,
    floors_about,
    leaves_apart,
    passages,
    stood_on,
)
from wardwright.model.site import Site
from wardwright.model.surfaces import level_of, levels_by_stairs

RING = ((0, 0), (5, 0), (5, 3), (0, 3))
LINES = {
    "south": ((0, 0), (5, 0)),
    "east": ((5, 0), (5, 3)),
    "north": ((5, 3), (0, 3)),
    "west": ((0, 3), (0, 0)),
}


def house(**facts: Any) -> Site:
    names = ("first", "ground", "second")
    return Site(
        name="three storeys",
        storeys=tuple(
            Storey(id=name, name=name, elevation_m=2.7 * index)
            for index, name in enumerate(("ground", "first", "second"))
        ),
        spaces=tuple(Space(id=f"{name}-room", name=name, storey=name, outline_m=RING) for name in names),
        walls=tuple(
            Wall(id=f"{name}-{side}", storey=name, line_m=line)
            for name in names
            for side, line in LINES.items()
        ),
        stairs=(
            Stair(id="lower-flight", lower="ground", upper="first", line_m=((1, 1), (4, 1)), **facts),
            Stair(id="upper-flight", lower="first", upper="second", line_m=((1, 2), (4, 2)), **facts),
        ),
    )


def test_the_storeys_that_stairs_join_are_beside() -> None:
    assert [level.storey.id for level in levels_by_stairs(house(), "first")] == ["ground", "second"]
    assert [level.storey.id for level in levels_by_stairs(house(), "ground")] == ["first"]


def test_on_a_storey_only_what_reaches_into_it_counts() -> None:
    site = house()
    level, others = level_of(site, "first"), levels_by_stairs(site, "first")
    on, about = blockers_on(level, others).panels, blockers_about(level, others).panels
    assert len(on) < len(about)
    assert (on[:, 5] > 2.7).all()
    assert (on[:, 4] < 5.1).all()
    assert about[:, 4].min() == 0.0


def test_balusters_that_are_looked_through_are_all_that_comes_or_goes() -> None:
    site = house(balusters="open")
    level, others = level_of(site, "first"), levels_by_stairs(site, "first")
    apart = leaves_apart(level, others, on_storey=False)
    told, away = (blockers_about(level, others, leaves=leaves).panels for leaves in LEAVES)
    assert len(apart) == len(told) - len(away) > 0
    assert all((told == row).all(axis=1).any() and not (away == row).all(axis=1).any() for row in apart)
    assert len(leaves_apart(level, others, on_storey=True)) < len(apart)
    assert not len(leaves_apart(level, (), on_storey=True))


def test_between_storeys_ceiling_and_floor_are_open_at_the_well_only() -> None:
    site = house()
    ground, first = level_of(site, "ground"), level_of(site, "first")
    up, down = passages(ground, first), passages(first, ground)
    assert [floor.level for floor in up] == pytest.approx([2.4, 2.7])
    assert [floor.level for floor in down] == pytest.approx([2.7, 2.4])
    assert len(up[0].holes) == 1
    assert up[0].holes[0][:, 1].mean() == pytest.approx(1.0)  # the lower flight's, not the upper one's


def test_rays_meet_the_floors_on_both_sides_and_end_at_the_next_but_one() -> None:
    site = house()
    floors = floors_about(level_of(site, "first"), levels_by_stairs(site, "first"))
    assert sorted(floor.level for floor in floors) == pytest.approx([0.0, 2.4, 2.7, 5.1, 5.4, 7.8])
    closed = floors_about(level_of(site, "first"), ())
    assert [(floor.level, floor.holes) for floor in closed] == [
        (pytest.approx(5.1), ()),
        (pytest.approx(2.7), ()),
    ]


def test_one_stands_on_the_flight_or_on_the_floor() -> None:
    site = house()
    level, others = level_of(site, "first"), levels_by_stairs(site, "first")
    places = np.array([[2.5, 1.0], [2.5, 2.0], [0.3, 1.5]])
    assert stood_on(level, others, places) == pytest.approx([1.35, 4.05, 2.7])
