"""What keeps somebody from an upper opening, or notices them there."""

from __future__ import annotations

from typing import Any

from common.climb_house import box, house
from common.houses import CATALOGUE
from wardwright.questions.reach_from_outside import answers
from wardwright.rules.finding import Mend
from wardwright.store.catalogue import load_catalogue

ROOF = box("roof", 5.9, 2.0, 2.3)


def mends(site: Any, catalogue: Any = CATALOGUE) -> list[Mend]:
    (answer,) = (one for one in answers(site, catalogue) if one.subject_id == "window")
    return list(answer.mends)


def test_what_stays_is_barred_and_what_can_be_moved_is_moved() -> None:
    """By a bin onto a roof that is too high from the ground: either without the other leads nowhere."""
    site = house(box("roof", 5.8, 2.0, 2.9), box("bin", 6.8, 2.0, 1.1, kind="bin"))
    found = {(mend.action, mend.subject) for mend in mends(site)}
    assert {("bar-climb", "roof"), ("move-thing", "bin")} <= found


def test_where_another_thing_leads_there_as_well_neither_alone_helps() -> None:
    twin = box("twin", 5.9, 3.0, 2.3)
    found = {mend.action for mend in mends(house(ROOF, twin))}
    assert not found & {"bar-climb", "move-thing"}


def test_a_contact_and_what_hears_the_pane() -> None:
    catalogue = load_catalogue()
    site = house(ROOF)
    kinds = {
        catalogue.sheet(str(dict(mend.values)["sheet"])).kind
        for mend in mends(site, catalogue)
        if mend.action == "add-device"
    }
    assert "opening-contact" in kinds


def test_a_better_lock_comes_last() -> None:
    found = [mend.action for mend in mends(house(ROOF))]
    assert found
    assert found == sorted(found, key=lambda action: action == "change-lock")


def test_a_good_answer_has_none() -> None:
    assert mends(house()) == []
