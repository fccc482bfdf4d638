from __future__ import annotations

from wardwright.documents.content.facts import basis_rows, figure_rows, guessed_facts
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site


def test_what_was_guessed_is_named(site: Site) -> None:
    assert guessed_facts(site) == ("thickness of 1 of 14 walls: g-kitchen",)


def test_many_guesses_are_counted_after_the_first_few(site: Site) -> None:
    marked = tuple(wall.model_copy(update={"basis": (("thickness_m", "guessed"),)}) for wall in site.walls)
    (fact,) = guessed_facts(site.model_copy(update={"walls": marked}))
    assert fact.startswith("thickness of 14 of 14 walls: g-south,")
    assert fact.endswith("and 8 more")


def test_facts_are_counted_by_how_they_are_known(site: Site) -> None:
    walls = next(row for row in basis_rows(site) if row.things == "walls")
    measured, told, guessed, default = walls.by_basis
    assert walls.count == 14
    # 14 lines and 8 thicknesses and 8 exterior marks were told, one thickness guessed; 7 fields each in all.
    assert (measured, told, guessed) == (0, 14 + 8 + 8, 1)
    assert default == 14 * 7 - 31


def test_kinds_of_which_there_are_none_have_no_row(site: Site) -> None:
    assert "pets" not in {row.things for row in basis_rows(site)}


def test_figures_have_range_source_and_mark(catalogue: Catalogue) -> None:
    pace, lock = figure_rows(catalogue, used=frozenset({"pace-hurried", "force-rc2"}))
    assert figure_rows(catalogue, used=frozenset({"pace-hurried"})) == (pace,)
    assert (pace.value, pace.range, pace.unit, pace.mark) == ("2.5", "1.8 to 3.2", "m/s", "assumption")
    assert (lock.source, lock.mark) == ("en-1627", "published")
