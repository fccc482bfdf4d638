from __future__ import annotations

from types import SimpleNamespace

import pytest

from common.ifc_house import Wish, written
from wardwright.intake.ifc import walls as ifc_walls
from wardwright.intake.ifc.reading import read_ifc
from wardwright.intake.report import IntakeReport
from wardwright.model.fabric import Wall


def walls(wish: Wish) -> tuple[dict[str, Wall], IntakeReport]:
    site, report = read_ifc(written(wish), where="t.ifc")
    return {wall.id: wall for wall in site.walls}, report


def test_line_thickness_and_heights_are_measured() -> None:
    found, _ = walls(Wish())
    south, inner = found["south-0"], found["inner"]
    assert south.line_m == ((0.0, 0.15), (6.0, 0.15))
    assert (south.thickness_m, south.base_m, south.height_m) == (0.3, 0.0, 2.7)
    assert south.basis_of("line_m") == "measured"
    assert south.footprint_m is None
    assert inner.line_m == ((3.55, 0.3), (3.55, 3.7))
    assert (inner.thickness_m, inner.height_m) == (0.1, 2.5)


def test_construction_is_guessed_by_the_material() -> None:
    found, report = walls(Wish())
    assert (found["south-0"].construction, found["inner"].construction) == ("brick", "plasterboard-stud")
    assert found["inner"].basis_of("construction") == "guessed"
    assert any("construction (by its material's name) guessed on 9 walls" in fact for fact in report.guessed)


@pytest.mark.parametrize(
    ("layers", "key"),
    [
        ([("Leichtbeton 102890359", 0.3)], "block"),
        ([("Masonry - Brick", 0.09), ("Insulation rigid", 0.2), ("Masonry - Concrete Block", 0.19)], "block"),
        ([("Plasterboard", 0.013), ("Metal - Stud Layer", 0.07)], "plasterboard-stud"),
        ([("Concrete - Cast In Situ", 0.4)], "concrete"),
        ([("Holzständer", 0.1)], "timber"),
        ([("Unobtainium", 0.1)], None),
    ],
)
def test_words_of_materials(
    monkeypatch: pytest.MonkeyPatch, layers: list[tuple[str, float]], key: str | None
) -> None:
    monkeypatch.setattr(ifc_walls, "layers_of", lambda _: iter(layers))
    assert ifc_walls.construction_of(SimpleNamespace(is_a=lambda _: False)) == key


def test_what_hangs_overhead_is_left_out_and_said() -> None:
    boxes = ("box", 0, (4.0, 1.0, 2.3, 4.5, 1.05, 2.6))
    found, report = walls(Wish(extra_walls=(boxes,)))
    assert "box" not in found
    assert "1 wall between 2.3 and 2.6 m, above head height (ceiling boxes): box" in report.left_out


def test_a_wall_through_two_storeys_stands_on_both() -> None:
    found, _ = walls(Wish(extra_walls=(("pier", 0, (4.0, 1.0, 0.0, 4.5, 1.2, 5.0)),)))
    assert (found["pier"].storey, found["pier"].height_m) == ("ground", 2.7)
    assert (found["pier-2"].storey, found["pier-2"].base_m, found["pier-2"].height_m) == ("upper", 0.0, 2.3)


def test_a_wall_that_only_reaches_up_into_its_storey_belongs_to_the_one_above() -> None:
    found, report = walls(Wish(extra_walls=(("edge", 0, (4.0, 1.0, 2.3, 4.5, 1.2, 5.0)),)))
    assert (found["edge"].storey, found["edge"].base_m) == ("upper", 0.0)
    assert not any("edge" in fact for fact in report.left_out)


def test_copies_are_dropped_and_said() -> None:
    again = ("again", 0, (3.5, 0.3, 0.0, 3.6, 3.7, 2.5))
    part = ("part", 0, (3.5, 1.0, 0.0, 3.6, 1.9, 2.5))
    found, report = walls(Wish(extra_walls=(again, part)))
    assert len(found) == 9
    (fact,) = [fact for fact in report.left_out if "inside another wall" in fact]
    assert fact.startswith("2 walls")


def test_a_turned_house_has_the_same_walls() -> None:
    plain, _ = walls(Wish())
    turned, _ = walls(Wish(turn_deg=37.0, offset=(2e5, 4e6, 300.0)))
    assert plain.keys() == turned.keys()
    for name, wall in plain.items():
        assert turned[name].thickness_m == pytest.approx(wall.thickness_m, abs=2e-4)
        assert turned[name].height_m == pytest.approx(wall.height_m)
