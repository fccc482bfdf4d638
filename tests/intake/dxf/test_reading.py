from __future__ import annotations

import io
import random
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
import shapely

from common.dxf_plan import GAPS, WALLS, Wish, written
from common.house_checks import loose_doors, not_closed, not_on_foot
from wardwright.errors import IntakeError
from wardwright.intake.dxf.reading import read_dxf
from wardwright.intake.report import IntakeReport
from wardwright.model.placement import is_way_in, sides_of_opening
from wardwright.model.site import Site
from wardwright.model.validation import problems

PLAIN = Wish()


def house(wish: Wish = PLAIN, unit: str | None = None) -> tuple[Site, IntakeReport]:
    return read_dxf(io.BytesIO(written(wish)), where="plan.dxf", unit=unit)


WISHES = {
    "inches": Wish(),
    "millimetres in blocks": Wish(unit="mm", header="mm", in_blocks=True),
    "header wrong": Wish(header="mm"),
    "turned and far off": Wish(turn_deg=30.0, offset=(3000.0, 5000.0)),
    "upside down": Wish(turn_deg=180.0),
    "without sizes": Wish(unit="m", header="m", with_sizes=False),
    "bound in": Wish(wall_layer="xref-x$0$A-WALL", opening_layer="xref-x$0$A-DOOR", version="R2010"),
}


@pytest.mark.parametrize("wish", WISHES.values(), ids=WISHES)
def test_every_way_of_drawing_gives_the_same_house(wish: Wish) -> None:
    site, report = house(wish)
    sizes = {s.id: shapely.Polygon(s.outline_m).area for s in site.spaces}
    inner = {
        "1-car-garage": 4.75 * 2.35,
        "kitchen": 3.85 * 3.25,
        "great-room": 4.75 * 3.25,
        "hall": 3.85 * 2.35,
    }
    assert sizes == pytest.approx(inner, abs=0.03)
    assert len(site.walls) == 7
    assert sorted(o.kind for o in site.openings if o.kind != "garage-door")[:4] == ["door"] * 4
    assert sum(is_way_in(site, o) for o in site.openings) == 4
    assert problems(site) == ()
    assert (not_closed(site), not_on_foot(site), loose_doors(site)) == ({}, [], [])
    assert "1 space outside the house: Covered porch" in report.left_out
    assert "room sizes: 4 of 4 written ones agree with the drawing" in report.read


def test_rooms_are_joined_as_drawn() -> None:
    site, _ = house()
    joined = {frozenset(s for s in sides_of_opening(site, o) if s) for o in site.openings}
    assert {frozenset({"hall", "kitchen"}), frozenset({"hall", "great-room"})} <= joined
    assert frozenset({"1-car-garage", "great-room"}) in joined


def test_uses_by_name() -> None:
    site, _ = house()
    assert {s.id: s.use for s in site.spaces} == {
        "1-car-garage": "garage",
        "kitchen": "kitchen",
        "great-room": "living",
        "hall": "hall",
    }


def test_heights_are_guessed_and_widths_are_not() -> None:
    site, report = house()
    assert site.storeys[0].basis_of("height_m") == "guessed"
    window = site.opening("kitchen-window")
    assert [window.basis_of(f) for f in ("width_m", "sill_m", "head_m")] == ["measured", "guessed", "guessed"]
    assert site.opening("hall-door").basis_of("head_m") == "measured"
    assert any(fact.startswith("elevation, height and name guessed on 1 storey") for fact in report.guessed)


def test_feet_and_inches_choose_the_rule_pack() -> None:
    assert house()[0].place.rule_pack == "us"
    assert house()[0].place.basis_of("rule_pack") == "guessed"
    assert house(Wish(unit="mm", header="mm"))[0].place.basis_of("rule_pack") == "default"


def test_open_floor_with_two_names_is_parted() -> None:
    # The wall between kitchen and hall ends half way: one floor, two names.
    stub = tuple((0.0, 2.5, 2.0, 2.6) if wall == (0.0, 2.5, 4.0, 2.6) else wall for wall in WALLS)
    gaps = tuple(gap for gap in GAPS if gap.box[1] != 2.5)
    # Too wide for a passage, so that the floor is one.
    far = tuple((0.0, 2.5, 1.2, 2.6) if wall == (0.0, 2.5, 2.0, 2.6) else wall for wall in stub)
    site, report = house(Wish(walls=far, gaps=gaps))
    (edge,) = site.open_edges
    assert set(edge.spaces) == {"hall", "kitchen"}
    assert site.space("hall").basis_of("outline_m") == "guessed"
    assert "nothing is built between Hall, Kitchen" in report.oddities
    assert (problems(site), not_closed(site), not_on_foot(site)) == ((), {}, [])
    passage, _ = house(Wish(walls=stub, gaps=gaps))
    assert not passage.open_edges
    assert any(
        o.kind == "gap" and o.wall and o.width_m == pytest.approx(2.0, abs=0.01) for o in passage.openings
    )


def test_what_has_no_name_and_no_door_is_no_room() -> None:
    shaft = (*WALLS, (7.0, 1.0, 8.0, 1.1), (7.0, 2.0, 8.0, 2.1), (7.0, 1.0, 7.1, 2.1), (7.9, 1.0, 8.0, 2.1))
    site, report = house(Wish(walls=shaft))
    assert len(site.spaces) == 4
    assert "1 space closed in by walls, without a name or an opening: 0.7 m2" in report.left_out


def test_posts_and_other_drawings_are_left_out() -> None:
    apart = (*WALLS, (20.0, 0.0, 25.0, 0.2))
    site, report = house(Wish(walls=apart, posts=((3.0, -1.3), (0.4, -1.3))))
    assert len(site.walls) == 7
    assert any("post" in fact for fact in report.left_out)
    assert any("apart from the house" in fact for fact in report.left_out)


@pytest.mark.parametrize(
    ("wish", "unit", "what"),
    [
        (Wish(), "mm", "no two faces of walls run side by side|close in no room"),
        (Wish(walls=WALLS[:1], gaps=(GAPS[0],)), None, "close in no room"),
        (Wish(wall_layer="THINGS"), None, "no layer of it"),
    ],
    ids=["wrong unit", "one wall", "no layer of walls"],
)
def test_what_makes_no_house_is_refused(wish: Wish, unit: str | None, what: str) -> None:
    with pytest.raises(IntakeError, match=what) as caught:
        house(wish, unit)
    assert caught.value.where == "plan.dxf"
    assert caught.value.cure


def test_a_damaged_file_gets_one_clear_message_or_a_house() -> None:
    lines = written().decode().split("\n")
    draw = random.Random(7)  # noqa: S311 - a seeded choice of damage, no secret
    refused: list[IntakeError] = []
    for _ in range(8):
        damaged = list(lines)
        for at in draw.sample(range(2, len(lines) - 4), 4):
            damaged[at] = draw.choice(("", "x", "1e999", damaged[at] + damaged[at]))
        # Anything but an IntakeError fails the test.
        try:
            read_dxf(io.BytesIO("\n".join(damaged).encode()), where="t.dxf")
        except IntakeError as error:
            refused.append(error)
    assert all(error.where == "t.dxf" and error.cure for error in refused)


def test_reading_needs_no_ifc_library() -> None:
    code = "import sys, wardwright.intake.dxf.reading; sys.exit('ifcopenshell' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0


# Counted by hand from a drawing of the file: 18 names of rooms indoors and two closets without one; 11 doors on
# hinges, six that slide (two of glass, two of closets, two into a wall), one opening without a leaf, one garage door;
# eight windows, one of them the narrow one by the front door.
def test_the_given_drawing_is_read_as_counted_by_hand(given: Callable[[str], Path]) -> None:
    path = given("houses/floorplan.dxf")
    site, report = read_dxf(io.BytesIO(path.read_bytes()), where=path.name)
    assert report.read[0].startswith(
        "unit: inches, although the header says millimetres: 11 door swings are 0.76 m"
    )
    assert len(site.spaces) == 20
    assert sum(s.basis_of("name") == "guessed" for s in site.spaces) == 2  # two closets
    doors = [o for o in site.openings if o.kind == "door"]
    assert sum(o.hinge in ("start", "end") for o in doors) == 11
    assert sum(o.hinge == "sliding" for o in doors) == 6
    kinds = [o.kind for o in site.openings]
    assert (kinds.count("window"), kinds.count("garage-door")) == (8, 1)
    # The opening without a leaf, and two ends of rooms where nothing is drawn.
    assert sorted(round(o.width_m, 2) for o in site.openings if o.kind == "gap") == [0.76, 1.02, 2.29]
    assert not any(fact.startswith("size") or " sizes beside no gap" in fact for fact in report.left_out)
    assert "room sizes: 17 of 18 written ones agree with the drawing" in report.read
    assert [o.id for o in site.openings if o.is_entry_door] == ["entry-door"]
    assert sum(is_way_in(site, o) for o in site.openings) == 12
    assert sides_of_opening(site, site.opening("entry-door")) == ("entry", None)
    assert problems(site) == ()
    assert (not_closed(site), not_on_foot(site), loose_doors(site)) == ({}, [], [])
    # 13'8 x 14' and 21'2 x 20'10, as written.
    sizes = {s.id: shapely.Polygon(s.outline_m).area for s in site.spaces}
    assert sizes["master-bedroom"] == pytest.approx(13.667 * 14.0 * 0.3048**2, rel=0.02)
    assert sizes["2-car-garage"] == pytest.approx(21.167 * 20.833 * 0.3048**2, rel=0.02)
