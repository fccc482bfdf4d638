"""The return visit to be expected."""

from __future__ import annotations

import pytest

from common import houses
from common.houses import on_wall, one_room
from common.rule_houses import HOUSES
from wardwright.costing.return_visits import (
    BEGINS,
    LENGTH,
    LOOKED_AT,
    Risk,
    chance_of_return,
    risk_inputs,
    risks_of,
)
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.return_risks import BY_ANSWER
from wardwright.rules.registry import findings_of
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample, sample_names
from wardwright.trials.draws import cases_of

CATALOGUE = load_catalogue()


def chance(*codes: str) -> float:
    risks = tuple(Risk("x", code, BEGINS + code.lower(), "") for code in codes)
    return float(chance_of_return(risks, cases_of(risk_inputs(CATALOGUE, risks)))[0])


def test_each_kind_of_risk_comes_once_and_by_itself() -> None:
    assert chance() == pytest.approx(0.1)
    assert chance("LNK104") == pytest.approx(1 - 0.9 * 0.6)
    assert chance("LNK104", "LNK104") == chance("LNK104")
    assert chance("LNK104", "MOV106") == pytest.approx(1 - 0.9 * 0.6 * 0.5)


def test_every_row_names_a_rule_that_is_looked_at() -> None:
    codes = {row.id.removeprefix(BEGINS).upper() for row in CATALOGUE.figures if row.id.startswith(BEGINS)}
    answers = {one.removeprefix(BEGINS).upper() for one in BY_ANSWER.values()}
    assert codes - {"SETTLING"} - answers <= set(LOOKED_AT)
    assert LENGTH in {row.id for row in CATALOGUE.figures}


def test_what_is_wrong_with_a_house_is_found_and_what_could_not_be_run_is_not() -> None:
    """The terrace has a dog that its detectors do not pass."""
    found = risks_of(read_sample("terrace"), CATALOGUE)
    assert {"MOV106"} <= {risk.code for risk in found}
    assert [risk.code for risk in found] == sorted(risk.code for risk in found)
    assert risks_of(one_room(), CATALOGUE) == ()


COUNTED = {row.id.removeprefix(BEGINS).upper(): row for row in CATALOGUE.figures if row.id.startswith(BEGINS)}
OF_THE_HOUSES = houses.CATALOGUE.model_copy(
    update={
        "figures": tuple({row.id: row for row in (*houses.CATALOGUE.figures, *COUNTED.values())}.values())
    }
)
"""The catalogue of the houses where rules fire, with the rows that say which rules count."""


def slow_risks(site: Site, catalogue: Catalogue) -> list[tuple[str, str, str]]:
    """Every rule that counts, run on the whole site with its mends."""
    return [
        (code, one.subject, one.message)
        for code in sorted(COUNTED.keys() & LOOKED_AT.keys())
        for one in findings_of(LOOKED_AT[code], site, catalogue)
        if one.severity != "not run"
    ]


@pytest.mark.parametrize("site", [read_sample(name) for name in sample_names()], ids=sample_names())
def test_device_by_device_the_risks_are_those_of_the_whole_site(site: Site) -> None:
    found = risks_of(site, CATALOGUE)
    assert [(one.code, one.subject, one.message) for one in found] == slow_risks(site, CATALOGUE)


@pytest.mark.parametrize("code", sorted(LOOKED_AT))
def test_so_they_are_where_a_rule_finds_something(code: str) -> None:
    for site in HOUSES[code][:3]:
        found = risks_of(site, OF_THE_HOUSES)
        assert [(one.code, one.subject, one.message) for one in found] == slow_risks(site, OF_THE_HOUSES)


def test_a_detector_too_high_is_a_risk() -> None:
    high = on_wall("md", "movement-12m", "south", 1.0, height_m=2.35)
    low = on_wall("md", "movement-12m", "south", 1.0, height_m=2.2)
    too_high = {risk.code for risk in risks_of(one_room(devices=(high,)), CATALOGUE)}
    fine = {risk.code for risk in risks_of(one_room(devices=(low,)), CATALOGUE)}
    sheet = CATALOGUE.sheet("movement-12m").movement
    assert sheet is not None
    assert ("MOV102" in too_high) == (sheet.height_high_m < 2.35)
    assert "MOV102" not in fine
