from __future__ import annotations

import hypothesis
import numpy as np
import pytest
from hypothesis import strategies as st

from common.turning import quarter_turned
from wardwright.model.fabric import Wall
from wardwright.model.fixture import Fixture
from wardwright.model.opening import Opening
from wardwright.model.record import Point3
from wardwright.model.revision import replaced
from wardwright.model.site import Site
from wardwright.physics.radio.from_site import RadioPath, path_losses, radio_paths, radio_place
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
TERRACE, BUNGALOW = read_sample("terrace-better"), read_sample("bungalow")
BAND = 868.65e6
JUDGED = {row.id: row.value_db for row in CATALOGUE.wall_losses}
CLASSES = [row.id for row in CATALOGUE.wall_losses]


def path(site: Site, one: Point3, other: Point3, *, band: float = BAND) -> RadioPath:
    return radio_paths(site, CATALOGUE, [(one, other)], frequency=band)[0]


def all_paths(site: Site) -> list[RadioPath]:
    unit = next(one for one in site.devices if CATALOGUE.sheet(one.sheet).kind == "control-unit")
    ways = [(radio_place(site, one), radio_place(site, unit)) for one in site.devices if one is not unit]
    return list(radio_paths(site, CATALOGUE, ways, frequency=BAND))


def room(**parts: object) -> Site:
    """Two rooms side by side, 4 m by 3 m each, a wall at x = 4 between them."""
    walls = [
        Wall(id="middle", storey="g", line_m=((4.0, 0.0), (4.0, 3.0)), thickness_m=0.1, construction="brick")
    ]
    return Site.model_validate(
        {
            "name": "two rooms",
            "storeys": [{"id": "g", "name": "ground", "elevation_m": 0.0}],
            "spaces": [
                {
                    "id": name,
                    "name": name,
                    "storey": "g",
                    "outline_m": [(x, 0), (x + 4, 0), (x + 4, 3), (x, 3)],
                }
                for name, x in (("left", 0.0), ("right", 4.0))
            ],
            "walls": walls,
            **parts,
        }
    )


HERE, THERE = (2.0, 1.5, 1.0), (6.0, 1.5, 1.0)


def test_one_brick_wall_takes_what_is_judged_for_its_class() -> None:
    found = path(room(), HERE, THERE)
    assert found.length_m == pytest.approx(4.0)
    assert [met.thing.ident for met in found.met] == ["middle"]
    # The build differs from the judged one by 13 mm of plaster, and it is straight on.
    assert found.walls_db == pytest.approx(JUDGED["masonry"], abs=1.0)
    assert found.counts[CLASSES.index("masonry")] == pytest.approx(1.0)
    assert found.met[0].at_m == pytest.approx((4.0, 1.5, 1.0))


def test_which_end_is_first_changes_nothing() -> None:
    assert path(room(), HERE, THERE) == path(room(), THERE, HERE)


@pytest.mark.parametrize(
    ("glazing", "expected"), [("double-plain", "glass"), ("double-coated", "coated"), (None, "unknown-glass")]
)
def test_a_pane_takes_the_place_of_its_wall(glazing: str | None, expected: str) -> None:
    pane = Opening(
        id="pane", name="pane", kind="window", wall="middle", offset_m=1.5, width_m=2.0, glazing=glazing
    )
    found = path(room(openings=[pane]), HERE, THERE)
    assert [met.thing.wall_class for met in found.met] == [expected]
    assert found.walls_db == pytest.approx(JUDGED[expected], abs=0.6)


def test_coated_glass_is_the_worst_wall_but_metal() -> None:
    build = {row.id: row.value_db for row in CATALOGUE.wall_losses if not row.id.endswith("floor")}
    assert sorted(build, key=lambda name: -build[name])[:2] == ["metal", "coated"]


def test_a_leaf_takes_nothing_when_it_stands_open() -> None:
    leaf = Opening(
        id="leaf", name="leaf", kind="door", wall="middle", offset_m=1.5, width_m=0.8, habit="open"
    )
    found = path(room(openings=[leaf]), HERE, THERE)
    assert found.walls_db == pytest.approx(JUDGED["leaf"])
    assert found.walls_told_db == 0.0
    assert sum(found.counts_told) == 0.0


def test_over_a_door_is_wall() -> None:
    leaf = Opening(id="leaf", name="leaf", kind="door", wall="middle", offset_m=1.5, width_m=0.8, head_m=2.0)
    found = path(room(openings=[leaf]), (2.0, 1.5, 2.2), (6.0, 1.5, 2.2))
    assert [met.thing.ident for met in found.met] == ["middle"]


@pytest.mark.parametrize(("kind", "takes"), [("radiator", True), ("boiler", True), ("sofa", False)])
def test_only_things_of_metal_take_something(kind: str, *, takes: bool) -> None:
    box = Fixture.model_validate(
        {"id": "box", "name": "box", "storey": "g", "kind": kind, "centre_m": (3, 1.5), "size_m": (0.6, 0.6),
         "height_m": 1.8}
    )  # fmt: skip
    found = path(room(fixtures=[box]), HERE, (3.8, 1.5, 1.0))
    assert (found.walls_db > 0.0) is takes


def test_a_wall_of_unknown_make_counts_by_its_thickness_and_says_so() -> None:
    losses = []
    for thickness in (0.06, 0.12, 0.4):
        wall = Wall(id="middle", storey="g", line_m=((4, 0), (4, 3)), thickness_m=thickness)
        found = path(room(walls=[wall]), HERE, THERE)
        assert found.met[0].thing.wall_class == "unknown"
        losses.append(found.walls_db)
    assert losses == pytest.approx([JUDGED["unknown"] * share for share in (0.5, 1.0, 2.0)])


def test_metal_is_capped_where_real_paths_go_round() -> None:
    wall = Wall(id="middle", storey="g", line_m=((4, 0), (4, 3)), construction="steel-sheet")
    found = path(room(walls=[wall]), HERE, THERE, band=2440e6)
    assert 30.0 <= found.walls_db <= 40.0


def test_thick_brick_takes_more_than_thin_and_a_higher_band_more_than_a_lower() -> None:
    def loss(thickness: float, band: float) -> float:
        wall = Wall(
            id="middle", storey="g", line_m=((4, 0), (4, 3)), thickness_m=thickness, construction="concrete"
        )
        return path(room(walls=[wall]), HERE, THERE, band=band).walls_db  # fmt: skip

    assert loss(0.18, BAND) < loss(0.4, BAND) < loss(0.4, 2440e6)


def test_a_floor_counts_once_but_not_through_its_stairwell() -> None:
    ground, upper = (3.5, 1.0, 1.0), (3.5, 1.0, 4.0)
    found = path(TERRACE, ground, upper)
    assert [met.thing.kind for met in found.met] == ["floor"]
    stair = TERRACE.stairs[0]
    (x0, y0), (x1, y1) = stair.line_m[0], stair.line_m[-1]
    middle = ((x0 + x1) / 2, (y0 + y1) / 2)
    assert path(TERRACE, (*middle, 1.5), (*middle, 3.5)).walls_db == 0.0


@pytest.mark.parametrize("site", [TERRACE, BUNGALOW], ids=lambda site: site.name)
def test_a_quarter_turn_changes_nothing(site: Site) -> None:
    turned = all_paths(quarter_turned(site))
    for one, other in zip(all_paths(site), turned, strict=True):
        assert one.walls_db == pytest.approx(other.walls_db, abs=1e-6)
        assert one.walls_told_db == pytest.approx(other.walls_told_db, abs=1e-6)
        assert one.length_m == pytest.approx(other.length_m, abs=1e-9)


def test_the_order_of_records_changes_nothing() -> None:
    shuffled = replaced(
        BUNGALOW, walls=BUNGALOW.walls[::-1], openings=BUNGALOW.openings[::-1], spaces=BUNGALOW.spaces[::-1]
    )
    losses = [[one.walls_db for one in all_paths(site)] for site in (BUNGALOW, shuffled)]
    assert losses[0] == pytest.approx(losses[1], abs=1e-9)


COORDINATES = st.tuples(*(st.floats(-6.0, 7.0) for _ in range(2)), st.floats(0.1, 2.3))
BUILDS = st.sampled_from([row.id for row in CATALOGUE.constructions])


@hypothesis.given(
    ends=st.lists(st.tuples(COORDINATES, COORDINATES), min_size=1, max_size=5),
    line=st.tuples(st.floats(-6.0, 7.0), st.floats(-6.0, 7.0), st.floats(0.3, 6.0), st.booleans()),
    build=BUILDS,
    band=st.sampled_from([433.92e6, 868.65e6, 915e6, 2440e6]),
)
def test_one_more_wall_never_raises_a_level(
    ends: list[tuple[Point3, Point3]], line: tuple[float, float, float, bool], build: str, band: float
) -> None:
    x, y, length, is_level = line
    end = (x + length, y) if is_level else (x, y + length)
    wall = Wall(id="one-more", storey="ground", line_m=((x, y), end), construction=build)
    walled = replaced(BUNGALOW, walls=(*BUNGALOW.walls, wall))
    before, after = (radio_paths(site, CATALOGUE, ends, frequency=band) for site in (BUNGALOW, walled))
    for one, other in zip(before, after, strict=True):
        assert other.walls_db >= one.walls_db - 1e-9
        assert other.walls_told_db >= one.walls_told_db - 1e-9
        assert other.free_space_db == one.free_space_db


def test_shut_leaves_never_take_less_than_leaves_as_told() -> None:
    for one in all_paths(BUNGALOW):
        assert one.walls_db >= one.walls_told_db - 1e-9


def test_new_paths_are_worked_out_as_they_would_be_alone() -> None:
    rng = np.random.default_rng(7)
    ends = [tuple(map(tuple, pair)) for pair in rng.uniform((-4, 0, 0.2), (6, 11, 2.2), (30, 2, 3)).tolist()]
    fresh = replaced(BUNGALOW, storeys=tuple(one.model_copy() for one in BUNGALOW.storeys))
    together = radio_paths(BUNGALOW, CATALOGUE, ends, frequency=BAND)
    for one, pair in zip(together, ends, strict=True):
        assert path(fresh, *pair).walls_db == pytest.approx(one.walls_db)


def test_a_contact_hangs_on_the_room_s_side_of_an_outside_door() -> None:
    contact = next(one for one in TERRACE.devices if one.id == "front-door-contact")
    x, y, _ = radio_place(TERRACE, contact)
    hall = TERRACE.space("hall")
    assert min(p[1] for p in hall.outline_m) <= y <= max(p[1] for p in hall.outline_m)
    assert min(p[0] for p in hall.outline_m) <= x <= max(p[0] for p in hall.outline_m)


def test_sums_of_many_paths_are_those_of_each() -> None:
    ways = [((0.5, 1.0, 1.0), (4.0, 9.0, 1.5)), ((-3.0, 2.0, 1.0), (5.0, 2.0, 2.0))]
    losses, counts = path_losses(BUNGALOW, CATALOGUE, ways, frequency=BAND)
    for one, loss, count in zip(
        radio_paths(BUNGALOW, CATALOGUE, ways, frequency=BAND), losses, counts, strict=True
    ):
        assert loss == pytest.approx(one.free_space_db + one.walls_db)
        assert tuple(count) == pytest.approx(one.counts)
