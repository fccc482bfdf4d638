from __future__ import annotations

from typing import Any

from wardwright.model.site import Site
from wardwright.questions.proving_plan import proving_plan
from wardwright.questions.results_since import GONE, as_they_hold
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.works.site_result import SiteResult

CATALOGUE = load_catalogue()
SITE = read_sample("terrace")


def result(key: str, step: str = "prove", outcome: str = "passed") -> SiteResult:
    given = {"number": 1, "reading": "", "remark": "", "revision": 1, "author": "me", "at": "", "earlier": ""}
    return SiteResult.model_validate({**given, "key": key, "step": step, "outcome": outcome})


def with_device(ident: str, **other: Any) -> Site:
    def changed(one: Any) -> Any:
        if one.id != ident:
            return one
        mount = one.mount.model_copy(update=other["mount"]) if "mount" in other else one.mount
        return one.model_copy(update={**other, "mount": mount})

    return SITE.model_copy(update={"devices": tuple(changed(one) for one in SITE.devices)})


def held(now: Site, *some: SiteResult) -> dict[str, str]:
    found = as_they_hold(some, now, CATALOGUE, sites={1: SITE})
    return {f"{one.step}/{one.key}": one.earlier for one in found}


ALL = (
    result("hall-movement", "fit", "done"),
    result("hall-keypad", "fit", "done"),
    result("view/hall-movement/toward//usual"),
    result("radio/hall-movement"),
    result("view/living-movement/toward//usual"),
    result("radio/hall-keypad"),
)


def test_in_the_same_house_all_holds() -> None:
    assert set(held(SITE, *ALL).values()) == {""}


def test_what_a_moved_device_was_fitted_and_tested_for_is_of_an_earlier_revision_and_the_rest_is_not() -> (
    None
):
    now = held(with_device("hall-movement", mount={"height_m": 2.0}), *ALL)
    assert now["fit/hall-movement"] == "it was moved or turned"
    assert now["prove/view/hall-movement/toward//usual"]
    assert now["prove/radio/hall-movement"]
    assert now["fit/hall-keypad"] == now["prove/radio/hall-keypad"] == ""
    assert now["prove/view/living-movement/toward//usual"] == ""


def test_what_was_taken_away_holds_no_more() -> None:
    gone = SITE.model_copy(
        update={"devices": tuple(one for one in SITE.devices if one.id != "hall-keypad"), "zones": ()}
    )
    now = held(gone, *ALL)
    assert now["fit/hall-keypad"] == now["prove/radio/hall-keypad"] == GONE
    assert now["fit/hall-movement"] == ""


def test_every_test_of_a_round_is_about_something_that_is_there() -> None:
    plan = proving_plan(SITE, CATALOGUE)
    keys = [f"{test.kind}/{test.about}" for stop in plan.round.stops for test in stop.tests]
    renamed = SITE.model_copy(update={"name": "another name"})
    assert set(held(renamed, *(result(key) for key in keys)).values()) == {""}


def test_a_new_name_alone_makes_nothing_old() -> None:
    assert set(held(with_device("hall-movement", name="Hall eye"), *ALL).values()) == {""}


def test_a_control_unit_that_was_moved_makes_every_radio_reading_old() -> None:
    now = held(with_device("hall-control-unit", mount={"height_m": 1.0}), *ALL)
    assert now["prove/radio/hall-keypad"]
    assert now["prove/radio/hall-movement"]
    assert now["fit/hall-keypad"] == ""
