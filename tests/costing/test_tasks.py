"""The tasks of a job: what makes one device take longer than another."""

from __future__ import annotations

import pytest

from common.houses import on_ceiling, on_wall, one_room, standing_free
from common.priced_room import HALL, UNIT, priced_room
from wardwright.costing.labour import likely_minutes
from wardwright.costing.tasks import climb_of, device_tasks, tasks_of, working_height
from wardwright.model.device import Device, Fixing
from wardwright.model.placement import FACE_GAP_M
from wardwright.model.programme import Zone
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def figures(device: Device, site: Site | None = None) -> set[str]:
    house = one_room(devices=(device,)) if site is None else site
    return {figure for task in device_tasks(house, CATALOGUE, device) for figure in task.figures}


@pytest.mark.parametrize(("height", "figure"), [(1.9, None), (2.2, "work-steps"), (3.5, "work-ladder")])
def test_height_asks_for_steps_or_a_ladder(height: float, figure: str | None) -> None:
    device = on_wall("md", "movement-12m", "south", 1.0, height_m=height)
    assert figures(device) & {"work-steps", "work-ladder"} == ({figure} if figure else set())


@pytest.mark.parametrize(("height", "climb"), [(1.5, "hand"), (2.2, "steps"), (3.4, "ladder")])
def test_what_one_stands_on(height: float, climb: str) -> None:
    device = HALL.model_copy(update={"mount": HALL.mount.model_copy(update={"height_m": height})})
    assert climb_of(priced_room(devices=(device,)), device) == climb


def test_outside_the_ground_is_what_one_stands_on() -> None:
    """Bedroom sounder: 2.1 m above the upper floor, on the outer face."""
    site = read_sample("terrace")
    sounder = next(one for one in site.devices if one.sheet == "sounder-outside")
    height = working_height(site, sounder)
    assert height is not None
    assert height > 4.0
    assert "work-ladder" in figures(sounder, site)


@pytest.mark.parametrize(
    ("construction", "figure"),
    [("plasterboard-stud", "work-drill-light"), ("brick", "work-drill-masonry"), ("stone", "work-drill-hard"),
     ("cavity-brick", "work-drill-masonry"), ("steel-sheet", "work-drill-metal"), ("unknown", "work-drill-unknown")],
)  # fmt: skip
def test_what_the_wall_is_made_of_says_how_it_is_drilled(construction: str, figure: str) -> None:
    house = one_room()
    walls = tuple(wall.model_copy(update={"construction": construction}) for wall in house.walls)
    site = house.model_copy(update={"walls": walls, "devices": (HALL,)})
    found = figures(HALL, site)
    assert figure in found
    assert ("allow-hard-wall" in found) == (construction == "unknown")


def test_tape_is_not_drilled_and_a_cold_frame_is_warmed() -> None:
    taped = HALL.model_copy(update={"fixing": Fixing(by="adhesive", surface="tile", surface_c=4.0)})
    found = figures(taped)
    assert {"work-stick", "work-warm-cold-surface"} <= found
    assert not any(name.startswith("work-drill") or name == "work-tile" for name in found)


def test_tile_and_texture_take_longer() -> None:
    for surface, figure in (("tile", "work-tile"), ("textured", "work-textured")):
        fixing = Fixing.model_validate({"by": "screws", "surface": surface})
        assert figure in figures(HALL.model_copy(update={"fixing": fixing}))


def test_a_ceiling_may_have_an_old_coating() -> None:
    assert "allow-old-coating" in figures(on_ceiling("smoke", "smoke-alarm-radio", 2.0, 2.0))


def test_what_stands_free_is_neither_climbed_to_nor_drilled_for() -> None:
    found = figures(standing_free("water", "water-radio", 1.0, 1.0))
    assert not any(
        name.startswith(("work-drill", "work-ladder", "work-steps", "work-stick")) for name in found
    )


def test_a_cable_is_as_long_as_its_way() -> None:
    """Along the room, across it from face to face, and 0.7 m up."""
    wired = on_wall("md", "movement-8m-wired", "north", 3.0)
    site = one_room(devices=(UNIT, wired))
    run = [task for task in device_tasks(site, CATALOGUE, wired) if "work-cable-per-m" in task.figures]
    assert len(run) == 1
    assert run[0].figures == ("work-cable-per-m", "work-cable-detour")
    along = abs((5.15 - 3.0) - (1.0 - 0.15)) + 4.0 - 2 * FACE_GAP_M + (2.2 - 1.5)
    assert run[0].times == pytest.approx(along, abs=1e-6)


def test_without_a_control_unit_the_cable_is_a_guess() -> None:
    assert "work-cable-run" in figures(on_wall("md", "movement-8m-wired", "north", 3.0))


def test_a_sheet_says_its_own_time() -> None:
    sheets = tuple(
        row.model_copy(update={"fit_min": 40.0}) if row.id == "movement-12m" else row
        for row in CATALOGUE.sheets
    )
    slower = CATALOGUE.model_copy(update={"sheets": sheets})
    site = one_room(devices=(HALL,))
    now, then = (likely_minutes(device_tasks(site, rows, HALL), rows) for rows in (CATALOGUE, slower))
    assert then - now == pytest.approx(26.0)


def test_what_was_there_before_takes_no_work() -> None:
    old = UNIT.model_copy(update={"is_existing": True})
    found = tasks_of(priced_room(devices=(old, HALL)), CATALOGUE)
    assert {task.device for task in found} == {None, "hall"}
    assert not any("job-programme" in task.figures for task in found)
    assert tasks_of(priced_room(devices=(old,)), CATALOGUE) == ()


def test_each_zone_is_keyed_in() -> None:
    zone = Zone(id="z", number=1, name="Hall", devices=("hall",), behaviour="instant")
    found = [t for t in tasks_of(priced_room(zones=(zone,)), CATALOGUE) if t.figures == ("work-zone",)]
    assert [task.times for task in found] == [1.0]


def test_every_kind_of_device_has_its_time() -> None:
    known = {row.id for row in CATALOGUE.figures}
    assert {f"fit-{sheet.kind}" for sheet in CATALOGUE.sheets} <= known
