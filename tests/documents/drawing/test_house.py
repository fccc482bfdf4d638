from __future__ import annotations

import pytest
import shapely

from wardwright.documents.drawing.hatching import area_of
from wardwright.documents.drawing.house import (
    blocks,
    doorways,
    draw_fixture,
    draw_ground,
    draw_stair,
    draw_walls,
    furniture,
    low_walls,
    name_fixture,
    openings_of,
    others_part,
    wall_area,
)
from wardwright.documents.drawing.labels import Board
from wardwright.documents.drawing.recording import Hatch, Head, Line, Polygon, Polyline, Recorder, Text, Verb
from wardwright.model.placement import opening_footprint, wall_footprint
from wardwright.model.site import Site


def verbs(recorder: Recorder) -> list[Verb]:
    return [verb for _, verb in recorder.recording().strokes]


def test_every_opening_is_cut_out_of_the_walls(site: Site) -> None:
    solid = wall_area(site, "ground")
    for wall, opening in openings_of(site, "ground"):
        assert solid.intersection(shapely.Polygon(opening_footprint(wall, opening))).area < 1e-6
    assert solid.area < blocks(site, "ground").area


def test_outer_corners_are_filled(site: Site) -> None:
    # Lines that end in one corner leave a square of half a thickness outside it: here (-0.3, -0.3) to (-0.15, -0.15).
    assert blocks(site, "ground").covers(shapely.box(-0.299, -0.299, -0.15, -0.15))


def test_a_flight_has_a_tread_for_each_step_and_points_up(site: Site) -> None:
    recorder = Recorder()
    draw_stair(recorder, site, site.stairs[0], storey_id="ground")
    treads = [verb for verb in verbs(recorder) if isinstance(verb, Line) and verb.style == "stair"]
    assert len(treads) == round(2.65 / 0.19) - 1
    assert all(abs(t.start[0] - t.end[0]) == pytest.approx(0.85) for t in treads)
    (head,) = [verb for verb in verbs(recorder) if isinstance(verb, Head)]
    assert head.at == site.stairs[0].line_m[-1]
    assert head.turn_deg == pytest.approx(90.0)


def test_what_gets_warm_is_hatched_and_what_has_room_is_named(site: Site) -> None:
    sofa, radiator, worktop, _ = site.fixtures
    for fixture, hatches, names in ((sofa, 0, 1), (radiator, 1, 0), (worktop, 0, 1)):
        recorder = Recorder()
        draw_fixture(recorder, fixture)
        board = Board(
            (-1, -1, 9, 9), mm_per_unit=20.0, solid=shapely.Polygon(), soft=furniture(site, "ground")
        )
        name_fixture(recorder, fixture, board=board, mm_per_m=20.0)
        assert sum(isinstance(verb, Hatch) for verb in verbs(recorder)) == hatches
        assert sum(isinstance(verb, Text) for verb in verbs(recorder)) == names


def test_the_boundary_stops_at_the_edge_of_the_sheet(site: Site) -> None:
    recorder = Recorder()
    draw_ground(recorder, site, bounds=(-1.0, -1.0, 6.0, 9.7))
    points = [p for verb in verbs(recorder) if isinstance(verb, Polyline) for p in verb.points]
    assert points
    assert max(p[1] for p in points) <= 9.7
    assert min(p[1] for p in points) >= -1.0


def test_labels_are_kept_off_furniture_and_flights(site: Site) -> None:
    soft = furniture(site, "ground")
    assert soft.intersects(shapely.Point(4.5, 3.0))
    assert soft.intersects(shapely.Point(0.45, 3.0))
    assert not soft.intersects(shapely.Point(1.6, 3.0))


def test_walls_are_one_area(site: Site) -> None:
    recorder = Recorder()
    draw_walls(
        recorder, wall_area(site, "ground"), faint=others_part(site, "ground"), low=low_walls(site, "ground")
    )
    (polygon,) = [verb for verb in verbs(recorder) if isinstance(verb, Polygon)]
    assert polygon.style == "wall"
    assert area_of(polygon.rings).area == pytest.approx(wall_area(site, "ground").area)


def test_a_parapet_is_drawn_by_its_faces(site: Site) -> None:
    low, *others = [wall for wall in site.walls if wall.storey == "ground"]
    parapet = low.model_copy(update={"height_m": 1.0})
    balcony = site.model_copy(update={"walls": tuple(parapet if w is low else w for w in site.walls)})
    recorder = Recorder()
    area = wall_area(balcony, "ground")
    draw_walls(recorder, area, faint=others_part(balcony, "ground"), low=low_walls(balcony, "ground"))
    areas = {verb.style: area_of(verb.rings) for verb in verbs(recorder) if isinstance(verb, Polygon)}
    assert set(areas) == {"wall", "wall-low"}
    # Where another wall stands too, that one is drawn.
    rest = shapely.union_all([shapely.Polygon(wall_footprint(wall)) for wall in others])
    assert areas["wall-low"].intersection(rest).area < 1e-6
    assert areas["wall-low"].area + areas["wall"].area == pytest.approx(area.area)


def test_walls_about_a_neighbour_alone_are_faint(site: Site) -> None:
    spaces = tuple(
        space.model_copy(update={"belongs": "neighbour"}) if space.id == "kitchen" else space
        for space in site.spaces
    )
    recorder = Recorder()
    shared = site.model_copy(update={"spaces": spaces})
    draw_walls(
        recorder,
        wall_area(shared, "ground"),
        faint=others_part(shared, "ground"),
        low=low_walls(shared, "ground"),
    )
    areas = {verb.style: area_of(verb.rings) for verb in verbs(recorder) if isinstance(verb, Polygon)}
    # The outer wall north of the kitchen is the neighbour's alone; the wall between is ours as well.
    assert areas["wall-else"].contains(shapely.Point(2.5, 8.65))
    assert areas["wall"].contains(shapely.Point(1.2, 5.25))
    assert areas["wall"].contains(shapely.Point(-0.15, 1.0))
    assert areas["wall"].area + areas["wall-else"].area == pytest.approx(wall_area(site, "ground").area)


def test_doorways_hold_doors_and_their_swings_and_no_windows(site: Site) -> None:
    kept = doorways(site, "ground")
    # The front door is hinged at 0.65 m along the south wall and swings in over 0.9 m.
    assert kept.contains(shapely.Point(1.0, 0.4))
    assert not kept.intersects(shapely.Point(3.6, -0.15))
    assert not kept.intersects(shapely.Point(3.0, 3.0))
