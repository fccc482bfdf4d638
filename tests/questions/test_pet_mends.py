"""What lets a detector stay with the animals in."""

from __future__ import annotations

from typing import Any

import pytest

from common.houses import CATALOGUE, on_opening, on_wall, one_room, opening, pet, two_rooms_and_hall, window
from common.mending import mended
from common.rule_houses.movement import PASSING_PETS, SIDEBOARD
from wardwright.model.revision import replaced
from wardwright.model.site import Site
from wardwright.questions.answer import WORST_FIRST, Answer
from wardwright.questions.pets_in import answers
from wardwright.rules.mending import operations_of
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample


def house(**parts: Any) -> Site:
    usual: dict[str, Any] = {"devices": (PASSING_PETS,), "fixtures": (SIDEBOARD,), "pets": (pet("cat"),)}
    return one_room(**(usual | parts))


def only(site: Site) -> Answer:
    (answer,) = answers(site, CATALOGUE)
    return answer


def actions(answer: Answer) -> list[str]:
    return [mend.action for mend in answer.mends]


def test_the_thing_is_moved_away_or_the_detector() -> None:
    found = only(house())
    assert {"move-thing", "move-device"} <= set(actions(found))
    without = only(house(fixtures=()))
    (moved,) = [mend for mend in found.mends if mend.action == "move-thing"]
    assert moved.subject == "sideboard"
    assert moved.gain is not None
    assert without.estimate is not None
    assert moved.gain.value == pytest.approx(without.estimate.value)


def test_what_is_built_in_is_not_moved() -> None:
    worktop = SIDEBOARD.model_copy(update={"kind": "worktop"})
    assert "move-thing" not in actions(only(house(fixtures=(worktop,))))


def test_each_mend_that_is_an_edit_makes_the_answer_better() -> None:
    site = house()
    before = only(site)
    for mend in before.mends:
        if operations_of(site, CATALOGUE, mend):
            after = only(mended(site, mend))
            assert WORST_FIRST.index(after.verdict) > WORST_FIRST.index(before.verdict), mend
            assert mend.gain is not None
            assert after.estimate is not None
            assert after.estimate.value == pytest.approx(mend.gain.value)


def test_another_sheet_where_it_passes_none() -> None:
    site = house(devices=(on_wall("fan", "fan", "west", 2.15),), fixtures=())
    found = [mend for mend in only(site).mends if mend.action == "replace-device"]
    assert dict(found[0].values)["sheet"] == "fan-passing-pets"
    assert only(mended(site, found[0])).verdict == "good"


def test_a_door_kept_shut() -> None:
    east = on_wall("fan", "fan", "east", 2.0)
    site = two_rooms_and_hall(devices=(east,), pets=(pet("cat", spaces=("kitchen",)),))
    shut = [mend.subject for mend in only(site).mends if mend.action == "keep-shut"]
    assert shut == ["kitchen-door", "study-door"]


def test_the_room_it_is_kept_out_of() -> None:
    """It may be in the kitchen and the hall; shut in the kitchen it is out of the hall detector's sight."""
    told: Any = {"basis": (("habit", "told"), ("habit_night", "told"))}
    openings = (
        opening("front-door", "south", 5.25, **told),
        opening("kitchen-door", "kitchen-wall", 4.0, habit="open", **told),
        opening("study-door", "study-wall", 4.0, **told),
    )
    hall = on_wall("fan", "fan", "north", 5.25)
    site = two_rooms_and_hall(
        devices=(hall,), openings=openings, pets=(pet("cat", spaces=("hall", "kitchen")),)
    )
    assert ("keep-shut", "kitchen-door") in [(mend.action, mend.subject) for mend in only(site).mends]


def test_contacts_where_nothing_else_leaves_no_doubt() -> None:
    shelves = tuple(
        SIDEBOARD.model_copy(
            update={"id": f"shelf-{i}", "centre_m": centre, "size_m": size, "height_m": 1.5, "kind": "shelf"}
        )
        for i, (centre, size) in enumerate(
            [
                ((2.5, 0.3), (3.6, 0.5)),
                ((2.5, 3.7), (3.6, 0.5)),
                ((4.7, 2.0), (0.5, 3.8)),
                ((1.5, 2.0), (0.5, 1.0)),
            ]
        )
    )
    site = house(fixtures=shelves, openings=(opening("door", "south", 1.0), window("window", "north", 2.0)))
    found = only(site)
    assert [mend.subject for mend in found.mends if mend.action == "add-device"] == ["door", "window"]
    watched = only(replaced(site, devices=(*site.devices, on_opening("c", "door"))))
    assert [mend.subject for mend in watched.mends if mend.action == "add-device"] == ["window"]
    assert "move-thing" not in actions(found)


def test_it_is_not_turned_up_over_peoples_heads() -> None:
    """Its far row is 5 degrees down and meets 1.15 m at its 12 m; 2 degrees up it would meet 1.57 m."""
    for mend in only(house()).mends:
        assert dict(mend.values).get("tilt_deg", 0.0) > -2.0


def test_a_good_answer_has_no_mends() -> None:
    site, catalogue = read_sample("terrace-better"), load_catalogue()
    for answer in answers(site, catalogue):
        assert answer.verdict != "good" or answer.mends == ()
