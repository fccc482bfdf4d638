from __future__ import annotations

from wardwright.documents.content.fitting_stages import BY_RADIO, STAYS, FitLine, fitting_stages
from wardwright.documents.content.quantities import sentence
from wardwright.documents.content.wording import DANGERS
from wardwright.model.site import Site
from wardwright.questions.fit_plan import fit_plan
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
TERRACE = read_sample("terrace")
PLAN = fit_plan(TERRACE, CATALOGUE, is_quick=True)
STAGES = fitting_stages(PLAN, TERRACE, CATALOGUE, findings=check(TERRACE, CATALOGUE))


def lines(site: Site = TERRACE) -> dict[str, FitLine]:
    plan = fit_plan(site, CATALOGUE, is_quick=True)
    found = fitting_stages(plan, site, CATALOGUE, findings=check(site, CATALOGUE))
    return {line.device: line for stage in found for line in stage.devices}


def test_every_device_is_fitted_once_in_the_order_of_the_plan() -> None:
    order = [line.device for stage in STAGES for line in stage.devices]
    assert order == [sheet.device for sheet in PLAN.sheets]
    assert sorted(order) == sorted(device.id for device in TERRACE.devices)
    assert STAGES[0].heading.startswith("Walk the job with the customer")
    assert "keypad last" in STAGES[-2].heading


def test_a_device_that_is_hung_for_a_try_is_named_there_and_fixed_elsewhere() -> None:
    tried = next(stage for stage in STAGES if stage.heading.startswith("Hang each radio device"))
    assert not tried.devices
    assert "Ground hall movement" in tried.named
    assert sentence(BY_RADIO) in lines()["hall-movement"].facts
    assert not any("radio" in fact for fact in lines()["hall-control-unit"].facts)


def test_a_sheet_says_from_which_corner_how_high_how_set_and_what_to_beware_of() -> None:
    line = lines()["hall-movement"]
    assert line.facts[0].startswith("Hall: 170 cm from the right corner as one faces the wall, 2.20 m above")
    assert any(fact.startswith("Looks ") for fact in line.facts)
    assert any(fact.startswith("About ") and "min" in fact for fact in line.facts)
    assert DANGERS["ladder"] in lines()["bedroom-1-sounder"].cautions
    contact = lines()["garden-door-contact"]
    assert any("electronics on the" in fact for fact in contact.facts)
    assert any(one.startswith("CON101: ") for one in contact.findings)


def test_what_was_there_before_is_not_fitted_but_listed_last() -> None:
    old = TERRACE.model_copy(
        update={
            "devices": tuple(
                one.model_copy(update={"is_existing": True}) if one.id == "hall-keypad" else one
                for one in TERRACE.devices
            )
        }
    )
    found = fitting_stages(fit_plan(old, CATALOGUE, is_quick=True), old, CATALOGUE, findings=())
    assert found[-1].heading == STAYS
    assert [line.device for line in found[-1].devices] == ["hall-keypad"]


def test_nothing_to_fit_is_no_stage() -> None:
    assert fitting_stages(None, TERRACE.bare, CATALOGUE, findings=()) == ()
