"""Margins of links, for the lives of cells and for what hangs on a repeater."""

from __future__ import annotations

from common.houses import on_wall, one_room
from wardwright.questions.link_margins import hang_on, link_margins
from wardwright.questions.will_it_reach import answers
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def test_no_device_no_margin() -> None:
    assert link_margins(one_room(), CATALOGUE) == {}


def test_without_a_control_unit_no_margin_is_known() -> None:
    assert link_margins(one_room(devices=(on_wall("pir", "movement-12m", "north", 2.0),)), CATALOGUE) == {}


def test_they_are_what_question_6_says() -> None:
    site = read_sample("terrace")
    told = {one.subject_id: one.estimate for one in answers(site, CATALOGUE) if one.estimate is not None}
    found = link_margins(site, CATALOGUE)
    assert found.keys() == told.keys()
    for name, margin in found.items():
        assert (margin.value, margin.low, margin.high) == (told[name].value, told[name].low, told[name].high)


def test_in_one_room_nothing_hangs_on_a_repeater() -> None:
    unit = on_wall("unit", "control-unit-radio", "south", 1.0, height_m=1.5)
    pir, repeater = (
        on_wall("pir", "movement-12m", "north", 2.0),
        on_wall("rep", "repeater-radio", "east", 2.0),
    )
    site = one_room(devices=(unit, pir, repeater))
    assert hang_on(site, CATALOGUE, repeater) == ((), ())
