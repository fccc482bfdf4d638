import math
import time
from collections.abc import Callable
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from common.houses import (
    CATALOGUE,
    on_ceiling,
    on_opening,
    on_wall,
    one_room,
    opening,
    two_rooms_and_hall,
    window,
)
from wardwright.errors import NotComputable
from wardwright.geometry.raster import BoolArray
from wardwright.model.device import Device, FreeMount
from wardwright.model.fabric import Space, Stair, Storey, Wall
from wardwright.model.fixture import Fixture
from wardwright.model.place import Place
from wardwright.model.site import Site
from wardwright.physics.detection import from_site
from wardwright.physics.detection.crossing import first_walked, mask_at, walked_along
from wardwright.physics.detection.from_site import (
    Noticing,
    Watch,
    crossing_angles,
    noticed_along,
    seen_facts,
    walks_of,
    watch,
    watch_elsewhere,
)

CORNER = Device(
    id="corner",
    name="corner",
    sheet="fan",
    mount=FreeMount(on="free", storey="ground", at_m=(0.06, 0.06), height_m=2.2),
    heading_deg=45.0,
)
SOFA = Fixture(id="sofa", name="sofa", storey="ground", kind="sofa", centre_m=(3.0, 2.0), size_m=(1.8, 0.9))


def area(mask: BoolArray, shapes: Watch) -> float:
    return float(mask.sum()) * shapes.grid.cell**2


def room(**parts: Any) -> Site:
    """One room with a door in the east wall, the detector in the south-west corner."""
    door = opening("door", "east", 3.0, hinge="end", swing="right")
    return one_room(**({"openings": (door,), "devices": (CORNER,)} | parts))


def noticed_on(site: Site, device: Device, *, posture: Any = "upright", **way: Any) -> Noticing:
    walks = walks_of([(way["points"], way["storeys"], way["clock"])])
    return noticed_along(site, CATALOGUE, [device], walks=walks, posture=posture)[0][0]


def angles_on(site: Site, device: Device, *, points: Any, storeys: Any, clock: Any) -> np.ndarray:
    return crossing_angles(site, CATALOGUE, device, walks=walks_of([(points, storeys, clock)]))


def straight(start: tuple[float, float], end: tuple[float, float], pace: float = 1.0) -> dict[str, Any]:
    length = math.dist(start, end)
    points = np.linspace(start, end, math.ceil(length / 0.04) + 1)
    return {
        "points": points,
        "storeys": ("ground",) * len(points),
        "clock": np.linspace(0.0, length / pace, len(points)),
    }


def nested(shapes: Watch) -> bool:
    pairs = ((shapes.low, shapes.seen), (shapes.seen, shapes.high), (shapes.core, shapes.low))
    return not any((inner & ~outer).any() for inner, outer in pairs)


def test_a_corner_detector_sees_nearly_all_of_an_empty_room() -> None:
    shapes = watch(room(), CATALOGUE, CORNER)
    assert (shapes.device, shapes.storey) == ("corner", "ground")
    assert nested(shapes)
    # 20 m2 of floor; 90 degrees from the corner see it all but the foot of the detector (within about 0.5 m).
    assert 19.0 < area(shapes.seen, shapes) < 20.0
    assert area(shapes.core, shapes) > 2.5
    assert not shapes.leak.any()


def test_the_core_keeps_off_the_door() -> None:
    shapes = watch(room(), CATALOGUE, CORNER)
    middles = shapes.grid.centres()[shapes.core]
    # The doorway is x = 5, y from 2.4 to 3.3 (by hand).
    beside = np.maximum(np.maximum(2.4 - middles[:, 1], middles[:, 1] - 3.3), 0.0)
    assert np.hypot(5.0 - middles[:, 0], beside).min() >= 1.5


def test_a_sofa_hides_little_and_a_cupboard_much() -> None:
    cupboard = SOFA.model_copy(update={"id": "cupboard", "height_m": 2.0})
    areas = [
        area(shapes.low, shapes)
        for fixtures in ((), (SOFA,), (cupboard,))
        for shapes in [watch(room(fixtures=fixtures), CATALOGUE, CORNER)]
    ]
    assert areas[0] >= areas[1] > areas[2] + 1.0


def test_a_shut_door_stops_the_low_side_and_not_the_high_side() -> None:
    site = two_rooms_and_hall()
    hall = on_wall("hall", "fan", "study-wall", 4.0, side="left")
    shapes = watch(site.model_copy(update={"devices": (hall,)}), CATALOGUE, hall)
    kitchen = shapes.grid.centres()[..., 0] < 3.9
    assert not (shapes.seen & kitchen).any()
    assert area(shapes.leak & kitchen, shapes) > 1.0
    assert nested(shapes)


def test_a_door_told_open_lets_the_low_side_through() -> None:
    site = two_rooms_and_hall()
    told = tuple(
        one.model_copy(update={"habit": "open", "basis": (("habit", "told"),)})
        if one.id == "kitchen-door"
        else one
        for one in site.openings
    )
    hall = on_wall("hall", "fan", "study-wall", 4.0, side="left")
    shapes = watch(site.model_copy(update={"openings": told, "devices": (hall,)}), CATALOGUE, hall)
    kitchen = shapes.grid.centres()[..., 0] < 3.9
    assert area(shapes.low & kitchen, shapes) > 1.0


def test_glass_stops_it() -> None:
    inner = Wall(id="inner", storey="ground", line_m=((2.5, 0.0), (2.5, 4.0)), thickness_m=0.1)
    glazed = window("glass", "inner", 2.0, width_m=3.0, sill_m=0.1, head_m=2.3, hinge="fixed")
    site = one_room(devices=(CORNER,))
    shapes = watch(
        site.model_copy(update={"walls": (*site.walls, inner), "openings": (glazed,)}), CATALOGUE, CORNER
    )
    assert not shapes.high[:, shapes.grid.centres()[0, :, 0] > 2.7].any()


def test_in_a_hot_room_nothing_is_sure() -> None:
    site = room(place=Place(warm_room_c=33.0))
    shapes = watch(site, CATALOGUE, CORNER)
    assert not shapes.low.any()
    assert np.array_equal(shapes.high, watch(room(), CATALOGUE, CORNER).high)


def test_lower_postures_are_sensed_in_less_of_the_room() -> None:
    shapes = [watch(room(), CATALOGUE, CORNER, posture=posture) for posture in ("upright", "crouch", "crawl")]
    areas = [area(one.seen, one) for one in shapes]
    assert areas[0] > areas[1] > areas[2] > 0.0
    assert all(map(nested, shapes))


def test_a_round_detector_on_the_ceiling_looks_all_round() -> None:
    above = on_ceiling("above", "round", 2.5, 2.0)
    shapes = watch(room(devices=(above,)), CATALOGUE, above)
    middles = shapes.grid.centres()[shapes.seen] - np.array([2.5, 2.0])
    assert {(x > 0, y > 0) for x, y in middles} == {(a, b) for a in (True, False) for b in (True, False)}


def test_a_contact_is_no_movement_detector() -> None:
    contact = on_opening("contact", "door")
    with pytest.raises(NotComputable, match="no sheet of a movement detector"):
        watch(room(devices=(contact,)), CATALOGUE, contact)


def test_halving_the_cell_moves_no_area_by_5_percent() -> None:
    site = room(fixtures=(SOFA,))
    coarse, fine = watch(site, CATALOGUE, CORNER), watch(site, CATALOGUE, CORNER, cell=0.05)
    for name in ("seen", "low", "high"):
        assert area(getattr(coarse, name), coarse) == pytest.approx(
            area(getattr(fine, name), fine), rel=0.05
        ), name
    assert area(coarse.core, coarse) == pytest.approx(area(fine.core, fine), rel=0.05)


def test_lists_in_another_order_change_nothing() -> None:
    site = two_rooms_and_hall(fixtures=(SOFA, SOFA.model_copy(update={"id": "bed", "centre_m": (8.0, 2.0)})))
    hall = on_wall("hall", "fan", "study-wall", 4.0)
    mixed = site.model_copy(
        update={name: getattr(site, name)[::-1] for name in ("walls", "openings", "spaces", "fixtures")}
    )
    one, other = watch(site, CATALOGUE, hall), watch(mixed, CATALOGUE, hall)
    assert all(
        np.array_equal(getattr(one, name), getattr(other, name)) for name in ("seen", "low", "high", "core")
    )


def turned(site: Site, by: Callable[[float, float], tuple[float, float]], degrees: float) -> Site:
    """The whole plan turned; free-standing devices only."""
    return site.model_copy(
        update={
            "spaces": tuple(
                s.model_copy(update={"outline_m": tuple(by(*p) for p in s.outline_m)}) for s in site.spaces
            ),
            "walls": tuple(
                w.model_copy(update={"line_m": (by(*w.line_m[0]), by(*w.line_m[1]))}) for w in site.walls
            ),
            "fixtures": tuple(
                f.model_copy(update={"centre_m": by(*f.centre_m), "turn_deg": f.turn_deg + degrees})
                for f in site.fixtures
            ),
        }
    )


def rotation(degrees: float) -> Callable[[float, float], tuple[float, float]]:
    quarter = {90.0: (0.0, 1.0), 180.0: (-1.0, 0.0), 270.0: (0.0, -1.0)}
    cos, sin = quarter.get(degrees, (math.cos(math.radians(degrees)), math.sin(math.radians(degrees))))
    return lambda x, y: (x * cos - y * sin, x * sin + y * cos)


def turned_watch(degrees: float, seed: int) -> tuple[Watch, Watch]:
    rng = np.random.default_rng(seed)
    box = Fixture(
        id="box", name="box", storey="ground", centre_m=tuple(rng.uniform(1.0, 3.5, 2)), size_m=(0.9, 0.6),
        turn_deg=float(rng.uniform(0, 90)), height_m=float(rng.uniform(0.4, 2.2)),
    )  # fmt: skip
    site = room(fixtures=(box,))
    by = rotation(degrees)
    mount = FreeMount(on="free", storey="ground", at_m=by(0.06, 0.06), height_m=2.2)
    device = CORNER.model_copy(update={"mount": mount, "heading_deg": 45.0 + degrees})
    return watch(site, CATALOGUE, CORNER), watch(turned(site, by, degrees), CATALOGUE, device)


@given(st.sampled_from([90.0, 180.0, 270.0]), st.integers(0, 999))
def test_quarter_turns_of_the_house_change_nothing(degrees: float, seed: int) -> None:
    plain, after = turned_watch(degrees, seed)
    for name in ("seen", "low", "high", "core"):
        back = np.rot90(getattr(after, name), k=round(degrees / 90.0))
        assert np.array_equal(back, getattr(plain, name)), name


@given(st.floats(1.0, 89.0), st.integers(0, 999))
def test_any_turn_changes_areas_within_the_cells_error(degrees: float, seed: int) -> None:
    plain, after = turned_watch(degrees, seed)
    for name in ("seen", "low", "high"):
        # Half a cell along an outline of at most 30 m.
        assert area(getattr(plain, name), plain) == pytest.approx(
            area(getattr(after, name), after), abs=1.5
        ), name


@given(st.integers(0, 9999))
def test_nobody_is_noticed_before_the_high_side_shape(seed: int) -> None:
    rng = np.random.default_rng(seed)
    site = two_rooms_and_hall(openings=two_rooms_and_hall().openings[1:3])
    gap = tuple(one.model_copy(update={"kind": "gap"}) for one in site.openings)
    hall = on_wall("hall", "fan", "study-wall", float(rng.uniform(3.0, 5.0)))
    start = (float(rng.uniform(0.3, 3.7)), 4.0 + float(rng.uniform(-0.2, 0.2)))
    way = straight(start, (4.6, start[1]), float(rng.uniform(0.3, 3.0)))
    found = noticed_on(site.model_copy(update={"openings": gap}), hall, **way)
    assert found.noticed_m.min() >= found.entered_m - 0.05
    assert np.isfinite(found.entered_m)


def test_a_walk_from_the_door_is_noticed_before_it_reaches_the_core() -> None:
    way = straight((4.8, 2.85), (0.5, 1.0), 2.5)
    found = noticed_on(room(), CORNER, **way)
    assert found.entered_m <= found.noticed_m.min()
    shapes = watch(room(), CATALOGUE, CORNER)
    in_core = mask_at(shapes.grid, shapes.core, way["points"])
    assert found.noticed_m.max() <= first_walked(walked_along(way["points"]), in_core) < math.inf
    assert (np.diff(found.noticed_m) <= 0.0).all()


def test_a_walk_on_another_storey_or_none_is_never_noticed() -> None:
    way = straight((4.8, 2.85), (0.5, 1.0)) | {"storeys": ("attic",) * 200}
    way["storeys"] = way["storeys"][: len(way["points"])]
    found = noticed_on(room(), CORNER, **way)
    assert math.isinf(found.entered_m)
    assert np.isinf(found.noticed_m).all()
    none = noticed_on(room(), CORNER, points=np.empty((0, 2)), storeys=(), clock=np.empty(0))
    assert math.isinf(none.entered_m)


def test_facts_add_up() -> None:
    site = two_rooms_and_hall()
    hall = on_wall("hall", "fan", "study-wall", 4.0)
    facts, shapes = seen_facts(site, CATALOGUE, hall), watch(site, CATALOGUE, hall)
    assert facts.space == "hall"
    assert facts.low_m2[0] == pytest.approx(area(shapes.low, shapes))
    assert facts.high_m2[-1] == pytest.approx(area(shapes.high, shapes))
    assert facts.leak_m2[-1] == pytest.approx(area(shapes.leak, shapes))
    assert facts.leak_m2[1] == pytest.approx(sum(leak for _, leak in facts.leak_spaces))
    assert facts.leak_spaces[0][0] == "kitchen"
    assert 0.0 < facts.blind_share[1] < 1.0
    assert facts.seen_at_10_m2[1] <= facts.high_m2[1]


def test_a_low_table_hides_floor_at_0_3_m_and_not_at_1_m() -> None:
    bare, furnished = (seen_facts(room(fixtures=f), CATALOGUE, CORNER) for f in ((), (SOFA,)))
    assert furnished.seen_at_03_m2[1] < bare.seen_at_03_m2[1] - 1.0
    assert furnished.seen_at_10_m2[1] == pytest.approx(bare.seen_at_10_m2[1], abs=0.3)


def test_crossing_angles_are_across_and_toward() -> None:
    across = straight((3.5, 0.5), (0.5, 3.5))
    toward = straight((3.5, 3.5), (1.0, 1.0))
    angles = [angles_on(room(), CORNER, **way) for way in (across, toward)]
    assert np.nanmax(angles[0]) == pytest.approx(90.0, abs=2.0)
    assert np.nanmax(angles[1]) == pytest.approx(0.0, abs=0.01)


def test_outside_the_shape_there_is_no_angle() -> None:
    way = straight((30.0, 30.0), (31.0, 30.0))
    found = angles_on(room(), CORNER, **way)
    assert np.isnan(found).all()


def landing_house(balusters: Any = "open") -> tuple[Site, Device]:
    """A hall of 5 m by 3 m with stairs, and a landing above; the detector is upstairs and looks down the well."""
    ring = ((0, 0), (5, 0), (5, 3), (0, 3))
    lines = {
        "south": ((0, 0), (5, 0)),
        "east": ((5, 0), (5, 3)),
        "north": ((5, 3), (0, 3)),
        "west": ((0, 3), (0, 0)),
    }
    site = Site(
        name="landing",
        storeys=(
            Storey(id="ground", name="ground", elevation_m=0.0),
            Storey(id="first", name="first", elevation_m=2.7),
        ),
        spaces=(
            Space(id="hall", name="Hall", storey="ground", outline_m=ring),
            Space(id="landing", name="Landing", storey="first", outline_m=ring),
        ),
        walls=tuple(
            Wall(id=f"{storey}-{name}", storey=storey, line_m=line)
            for storey in ("ground", "first")
            for name, line in lines.items()
        ),
        stairs=(
            Stair(
                id="stairs", lower="ground", upper="first", line_m=((1.0, 1.5), (4.0, 1.5)), width_m=1.6,
                balusters=balusters,
            ),
        ),
    )  # fmt: skip
    device = Device(
        id="landing", name="landing", sheet="fan", heading_deg=180.0, tilt_deg=15.0,
        mount=FreeMount(on="free", storey="first", at_m=(4.9, 1.5), height_m=2.2),
    )  # fmt: skip
    return site.model_copy(update={"devices": (device,)}), device


def beside_the_flight(below: Watch) -> BoolArray:
    """Cells farther from the flight of that house than a body's radius reaches."""
    x, y = np.moveaxis(below.grid.centres(), -1, 0)
    off: BoolArray = (np.abs(y - 1.5) > 0.8 + 0.35) | (x < 1.0 - 0.35) | (x > 4.0 + 0.35)
    return off


def test_through_a_stairwell_it_may_see_the_floor_below() -> None:
    site, device = landing_house()
    (below,) = watch_elsewhere(site, CATALOGUE, device)
    assert below.storey == "ground"
    assert nested(below)
    assert area(below.high, below) > 0.3
    # By hand: over the well's near edge (x = 4, 2.2 m below the eye and 0.9 m away) it sees heads at 1.75 m from
    # x = 4.9 - 0.9 x 3.15 / 2.2 = 3.61 on, and a body's radius (three cells) more counts. Who is on the flight
    # stands higher, and is seen up to its end at x = 4.
    x = below.grid.centres()[..., 0]
    assert x[below.high & ~beside_the_flight(below)].max() < 4.0 + 0.35
    assert x[below.high & beside_the_flight(below)].max() < 3.61 + 0.35


def test_without_a_stairwell_nothing_is_seen_below() -> None:
    site, device = landing_house()
    small = site.stairs[0].model_copy(update={"well_m": ((4.0, 0.2), (4.1, 0.2), (4.1, 0.3), (4.0, 0.3))})
    (below,) = watch_elsewhere(site.model_copy(update={"stairs": (small,)}), CATALOGUE, device)
    # Who comes up the flight is above the floor in the end, whatever hole is drawn.
    assert not (below.high & beside_the_flight(below)).any()


def test_open_balusters_are_seen_through_on_the_high_side_only() -> None:
    shown = {}
    for balusters in ("open", "solid", "none"):
        site, device = landing_house(balusters)
        shown[balusters] = watch(site, CATALOGUE, device)
    assert np.array_equal(shown["open"].low, shown["solid"].low)
    assert np.array_equal(shown["open"].high, shown["none"].high)
    assert shown["open"].high.sum() >= shown["solid"].high.sum()


def test_somebody_coming_up_the_stairs_is_noticed_on_the_flight() -> None:
    site, device = landing_house("none")
    way = straight((1.0, 1.5), (4.0, 1.5))
    up = noticed_on(site, device, **way)
    assert np.isfinite(up.noticed_m[2])
    assert up.noticed_m[2] < 3.0


@given(st.integers(0, 9999), st.sampled_from(["upright", "crouch", "crawl", "pet"]), st.booleans())
def test_nobody_is_noticed_on_a_flight_before_the_high_side_shape(
    seed: int, posture: Any, is_upstairs: bool
) -> None:
    # From before the foot of the flight or from the floor it leads to; not from under it, where the model's upright
    # body, flat below, sticks out of the steps.
    rng = np.random.default_rng(seed)
    site, _ = landing_house("none")
    at = (
        float(rng.uniform(4.2, 4.9) if is_upstairs else rng.uniform(0.1, 0.8)),
        float(rng.uniform(0.1, 2.9)),
    )
    storey = "first" if is_upstairs else "ground"
    mount = FreeMount(on="free", storey=storey, at_m=at, height_m=float(rng.uniform(1.0, 2.3)))
    facts = {"heading_deg": float(rng.uniform(0, 360)), "tilt_deg": float(rng.choice([0.0, 10.0, 40.0]))}
    device = CORNER.model_copy(update={"mount": mount, **facts})
    side = float(rng.uniform(0.8, 2.2))
    way = straight((1.0, side), (3.7, side), float(rng.uniform(0.3, 3.0)))
    way["storeys"] = ("ground",) * len(way["points"])
    found = noticed_on(site, device, posture=posture, **way)
    # A cell and a step of the walk: the shape is told by cells.
    assert found.noticed_m.min() >= found.entered_m - 0.15 or np.isinf(found.noticed_m).all()


def test_on_a_flight_one_is_seen_as_high_as_one_stands() -> None:
    # By hand, 0.9 m up a metre from x = 1 on: the highest row, 5.7 deg down less a margin of 5 deg, is 2.16 m up at
    # x = 3.4, where the feet of who crawls up are as high. A body's radius and half a cell farther, at 3.67, nobody
    # is noticed any more. At x = 3.05 they are from 1.85 to 2.45 m up, in view; on the floor the steps hide all.
    site, _ = landing_house("none")
    mount = FreeMount(on="free", storey="ground", at_m=(0.1, 1.5), height_m=2.2)
    device = CORNER.model_copy(update={"mount": mount, "heading_deg": 0.0})
    shapes = watch(site, CATALOGUE, device, posture="crawl")
    row, column = shapes.grid.cells_of(np.array([[3.85, 1.55], [3.05, 1.55]]))
    assert shapes.high[row, column].tolist() == [False, True]


def test_a_moved_device_works_out_itself_alone() -> None:
    site = two_rooms_and_hall(fixtures=(SOFA,))
    first, second = on_wall("one", "fan", "study-wall", 2.0), on_wall("two", "fan", "kitchen-wall", 3.0)
    for device in (first, second):
        watch(site, CATALOGUE, device)
    before = from_site._watched.cache_info()
    moved = on_wall("two", "fan", "kitchen-wall", 3.5)
    changed = site.model_copy(update={"devices": (first, moved)})
    start = time.process_time()
    for device in (first, moved):
        watch(changed, CATALOGUE, device)
    lasted = time.process_time() - start
    after = from_site._watched.cache_info()
    assert (after.hits - before.hits, after.misses - before.misses) == (1, 1)
    assert lasted < 1.0  # some 15 ms of the processor, however busy the machine is


def test_a_core_is_worked_out_when_it_is_asked_for_and_then_kept() -> None:
    site = two_rooms_and_hall(fixtures=(SOFA,))
    before = from_site._core.cache_info().misses
    shapes = watch(site, CATALOGUE, on_wall("one", "fan", "study-wall", 2.15))
    assert from_site._core.cache_info().misses == before
    assert shapes.core is shapes.core
    assert from_site._core.cache_info().misses == before + 1
