"""The forty homes of ../shared/data/plans: what the converter finds odd is what their README says."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from statistics import median
from typing import Any

import pytest

from common.given_houses import HOMES
from common.plan_homes import Home, read_home
from wardwright.model.document import read_document, write_document
from wardwright.model.placement import is_way_in

pytestmark = pytest.mark.given_data


@pytest.fixture(scope="module")
def files(given: Callable[[str], Path]) -> dict[str, Path]:
    return {name: given(f"plans/homes/{name}.json") for name in HOMES}


@pytest.fixture(scope="module")
def homes(files: dict[str, Path]) -> dict[str, Home]:
    return {name: read_home(path) for name, path in files.items()}


@pytest.fixture(scope="module")
def raw(files: dict[str, Path]) -> dict[str, dict[str, Any]]:
    return {name: json.loads(path.read_text(encoding="utf-8")) for name, path in files.items()}


def named(homes: dict[str, Home], what: str) -> dict[str, Any]:
    found = {name: getattr(home.oddities, what) for name, home in homes.items()}
    return {name: value for name, value in found.items() if value}


def test_every_home_of_the_folder_is_listed(files: dict[str, Path]) -> None:
    folder = next(iter(files.values())).parent
    assert sorted(HOMES) == sorted(path.stem for path in folder.glob("*.json"))
    assert len(HOMES) == 40


def test_all_that_the_files_hold_comes_in(homes: dict[str, Home], raw: dict[str, dict[str, Any]]) -> None:
    for name, home in homes.items():
        data, site = raw[name], home.site
        assert len(site.spaces) + len(home.oddities.shafts) == len(data["rooms"])
        assert len(site.openings) == len(data["openings"])
        splitters = sum(wall["kind"] == "area_splitter" for wall in data["walls"])
        assert len(site.walls) + splitters == len(data["walls"])
        assert len(site.fixtures) == len(data["fixtures"])
    # README: 1230 wall pieces, 282 doors (49 of them entrance doors), 181 windows.
    openings = [opening for home in homes.values() for opening in home.site.openings]
    assert sum(len(data["walls"]) for data in raw.values()) == 1230
    assert sum(o.kind == "door" for o in openings) == 282
    assert sum(o.is_entry_door for o in openings) == 49
    assert sum(o.kind == "window" for o in openings) == 181
    assert sum(room["area_m2"] > 1.0 for data in raw.values() for room in data["rooms"]) == 256
    # README: median dwelling 65 m2, range 40 to 127.
    outside = ("BALCONY", "LOGGIA", "SHAFT")
    sizes = [
        sum(room["area_m2"] for room in data["rooms"] if room["type"] not in outside) for data in raw.values()
    ]
    assert (median(sizes), min(sizes), max(sizes)) == pytest.approx((65, 40, 127), abs=1.5)


def test_one_ring_is_repaired(homes: dict[str, Home]) -> None:
    assert named(homes, "repaired") == {"332_04": ["r2"]}
    space = homes["332_04"].site.space("r2")
    assert space.basis_of("outline_m") == "guessed"
    assert {s.basis_of("outline_m") for s in homes["332_05"].site.spaces} == {"measured"}


def test_four_rooms_have_no_door(homes: dict[str, Home]) -> None:
    doorless = named(homes, "doorless")
    assert sum(len(rooms) for rooms in doorless.values()) == 4
    # Kitchens that are open to the room beside them.
    for name, (room,) in doorless.items():
        site = homes[name].site
        assert site.space(room).use == "kitchen"
        assert any(room in edge.spaces for edge in site.open_edges)


def test_walls_cross_freely(homes: dict[str, Home]) -> None:
    assert len(named(homes, "crossing")) == 40


def test_seventeen_homes_have_walls_off_the_axes(homes: dict[str, Home]) -> None:
    turned = named(homes, "off_axes")
    assert len(turned) == 17
    assert {name for name in turned if name.startswith("4836")} == {f"4836_0{n}" for n in range(1, 7)}


def test_two_floors_have_no_names_of_rooms(homes: dict[str, Home]) -> None:
    nameless = named(homes, "without_names")
    assert {name[:4] for name in nameless} == {"1241", "4836"}
    # README: 30 homes with room types.
    assert len(homes) - len(nameless) == 30


def test_about_thirty_five_homes_differ(raw: dict[str, dict[str, Any]]) -> None:
    kinds = {
        (tuple(sorted(round(r["area_m2"]) for r in data["rooms"] if r["area_m2"] > 1)), len(data["openings"]))
        for data in raw.values()
    }
    assert len(kinds) == 35


def test_the_terraces_have_stairs_and_two_doors(homes: dict[str, Home]) -> None:
    with_stairs = named(homes, "stairs")
    assert set(with_stairs) == {name for name in HOMES if name.startswith(("2494", "332"))}
    for name, home in homes.items():
        if name.startswith("2494"):
            assert sum(o.is_entry_door for o in home.site.openings) == 2


def test_a_window_onto_a_balcony_is_on_the_outside(homes: dict[str, Home]) -> None:
    found = named(homes, "onto_a_balcony")
    assert found
    for name, windows in found.items():
        site = homes[name].site
        assert all(is_way_in(site, site.opening(window)) for window in windows)


def test_entrance_doors_may_open_to_what_is_not_drawn(homes: dict[str, Home]) -> None:
    assert sum(len(doors) for doors in named(homes, "to_a_gallery").values()) == 26


def test_every_repair_is_small_and_listed(homes: dict[str, Home], raw: dict[str, dict[str, Any]]) -> None:
    assert sum(len(windows) for windows in named(homes, "narrowed").values()) == 13
    assert set(named(homes, "lengthened")) == {"4976_03", "4976_04"}
    assert set(named(homes, "gaps")) == {"2494_01", "2494_05"}
    for name, home in homes.items():
        drawn = {o["id"]: o["width_m"] for o in raw[name]["openings"]}
        for opening in home.site.openings:
            if opening.basis_of("width_m") == "measured":
                assert opening.width_m == pytest.approx(drawn[opening.id], abs=0.06)
            else:
                assert opening.id in home.oddities.narrowed
                assert opening.width_m > 0.8 * drawn[opening.id]


def test_what_is_guessed_is_marked(homes: dict[str, Home]) -> None:
    for home in homes.values():
        for opening in home.site.openings:
            assert {opening.basis_of(f) for f in ("sill_m", "head_m", "lock")} == {"guessed"}
            assert opening.glazing is None or opening.basis_of("glazing") == "guessed"
        assert {space.basis_of("use") for space in home.site.spaces} == {"guessed"}
        low = [wall for wall in home.site.walls if wall.height_m is not None]
        assert all((wall.height_m, wall.basis_of("height_m")) == (1.0, "guessed") for wall in low)
        assert home.site.place.north_deg is None


def test_doors_swing_as_drawn(raw: dict[str, dict[str, Any]], homes: dict[str, Home]) -> None:
    """The leaf, turned as the site says, ends where the file says that it does."""
    from wardwright.model.leaves import leaf_panels  # noqa: PLC0415 - only here

    for name, home in homes.items():
        swings = {o["id"]: o["swing"] for o in raw[name]["openings"] if o.get("swing")}
        for opening in home.site.openings:
            if opening.id not in swings:
                continue
            wall = home.site.wall(opening.wall)
            standing_open = opening.model_copy(
                update={"habit": "open", "basis": (*opening.basis, ("habit", "told"))}
            )
            panel = leaf_panels(
                wall, standing_open, floor=0.0, whole=(0.0, 2.6), medium="heat", leaves="told"
            ).panels[0]
            tip = swings[opening.id]["open"]
            slack = wall.thickness_m + 0.1
            assert tuple(panel[2:4]) == pytest.approx(tip, abs=slack), (name, opening.id)


def test_the_documents_are_read_again(homes: dict[str, Home]) -> None:
    for home in homes.values():
        assert read_document(write_document(home.site), where="again") == home.site
