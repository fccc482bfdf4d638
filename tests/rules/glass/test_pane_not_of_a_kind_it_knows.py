"""GLS103: the smallest pane and the kinds of glass on the sheet."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE
from common.rule_houses.glass import ear, heard, long_room
from wardwright.rules.glass.pane_not_of_a_kind_it_knows import pane_not_of_a_kind_it_knows as rule
from wardwright.rules.glass.pane_not_of_a_kind_it_knows import shorter_side_m
from wardwright.rules.registry import findings_of


def test_the_shorter_side_is_one_leafs_share() -> None:
    assert shorter_side_m(heard(8.15, width_m=1.0, leaves=4).openings[0]) == pytest.approx(0.25)
    assert shorter_side_m(heard(8.15, sill_m=1.9).openings[0]) == pytest.approx(0.2)


def test_a_small_pane_is_held_against_the_sheet() -> None:
    (found,) = findings_of(rule, heard(8.15, width_m=0.3), CATALOGUE)
    assert found.estimate is not None
    assert (found.estimate.value, found.limit, found.severity) == (0.3, 0.4, "must mend")
    assert found.mends[0].values == (("sheet", "ear-any-glass"),)


def test_glass_that_the_sheet_does_not_name() -> None:
    (found,) = findings_of(rule, heard(8.15, glazing="laminated"), CATALOGUE)
    assert (found.estimate, found.limit) == (None, None)
    assert "not stated for its glass, laminated" in found.message


def test_glass_that_no_sheet_names_has_no_mend() -> None:
    (found,) = findings_of(rule, heard(8.15, glazing="wired"), CATALOGUE)
    assert found.mends == ()
    assert "shock detector" in found.cure


def test_a_sheet_that_names_no_glass_cannot_be_run() -> None:
    silent = CATALOGUE.sheet("ear").glass_break
    assert silent is not None
    sheets = tuple(
        one.model_copy(update={"glass_break": silent.model_copy(update={"glazings": ()})})
        if one.id == "ear"
        else one
        for one in CATALOGUE.sheets
    )
    (found,) = findings_of(
        rule, long_room(devices=(ear(8.15),)), CATALOGUE.model_copy(update={"sheets": sheets})
    )
    assert (found.severity, found.subject) == ("not run", "ear")
