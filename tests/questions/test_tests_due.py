"""Which tests are due, for houses that differ by one thing each."""

from __future__ import annotations

import pytest

from common.changed_pairs import (
    CATALOGUE,
    detector_moved,
    house,
    state,
)
from common.houses import on_wall, zone
from wardwright.model.programme import Programme
from wardwright.model.site import Site
from wardwright.questions.compared import State
from wardwright.questions.tests_due import tests_due as due


@pytest.fixture(scope="module")
def before() -> State:
    return state(house())


def pairs(before: State, site: Site) -> set[tuple[str, str]]:
    return {(one.about, one.kind) for one in due(before, state(site), CATALOGUE)}


def test_a_house_that_is_as_it_was_needs_none(before: State) -> None:
    assert due(before, state(house()), CATALOGUE) == ()


def test_a_detector_that_moved_asks_for_its_walks_and_its_radio_reading_alone(before: State) -> None:
    found = pairs(before, detector_moved())
    assert found >= {(("study-movement"), kind) for kind in ("view", "beyond view", "radio")}
    assert not any(about in ("kitchen-movement", "keypad") for about, _ in found)


def test_a_new_name_asks_for_no_test(before: State) -> None:
    site = house()
    renamed = tuple(one.model_copy(update={"name": f"{one.name} by the window"}) for one in site.devices)
    assert pairs(before, site.model_copy(update={"devices": renamed})) == set()


def test_a_zone_that_is_called_otherwise_is_to_be_shown(before: State) -> None:
    site = house()
    zones = (*site.zones[:2], zone(3, "study and desk", "study-movement"))
    assert pairs(before, site.model_copy(update={"zones": zones})) == {("study-movement", "shown")}


def test_another_abort_delay_asks_for_the_message(before: State) -> None:
    assert ("unit", "message") in pairs(before, house(programme=Programme(abort_delay_s=20.0)))


def test_a_new_device_of_another_kind_is_to_be_operated(before: State) -> None:
    site = house()
    added = on_wall("button", "hold-up", "west", 2.0, height_m=1.2)
    kinds = {row.kind: row.id for row in CATALOGUE.sheets}
    added = added.model_copy(update={"sheet": kinds["sounder"]})
    found = pairs(before, site.model_copy(update={"devices": (*site.devices, added)}))
    assert ("button", "operation") in found


def test_each_test_stands_once(before: State) -> None:
    found = due(before, state(detector_moved()), CATALOGUE)
    assert len({(one.about, one.kind) for one in found}) == len(found)
