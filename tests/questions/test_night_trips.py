"""Question 8: trips at night with part of the alarm set."""

from __future__ import annotations

from typing import Any

import pytest

from common.arrival_house import KEYPAD
from common.houses import two_rooms_and_hall
from common.night_house import ANN, CHILD, night_house
from common.turning import quarter_turned
from wardwright.model.household import Pass
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.night_trips import NUMBER, answers
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
HOUSE = night_house()


def by_subject(site: Site) -> dict[str, Answer]:
    return {answer.subject: answer for answer in answers(site, CATALOGUE)}


@pytest.mark.parametrize(
    ("parts", "reason"),
    [
        ({}, "no zone is programmed yet"),
        ({"zones": HOUSE.zones, "devices": HOUSE.devices}, "who lives there is not told"),
        ({"parts": ()}, "the site has no night part"),
        ({"spaces": ()}, "none of the spaces is ours"),
    ],
)
def test_what_is_missing_is_said(parts: dict[str, Any], reason: str) -> None:
    (answer,) = answers(two_rooms_and_hall().model_copy(update=parts), CATALOGUE)
    assert (answer.question, answer.verdict, answer.reason) == (
        NUMBER,
        "unknown",
        f"not computable: {reason}",
    )


def test_no_zone_in_the_part() -> None:
    site = night_house()
    by_day = tuple(one.model_copy(update={"parts": ("full",)}) for one in site.zones)
    (answer,) = answers(site.model_copy(update={"zones": by_day}), CATALOGUE)
    assert answer.reason == "not computable: no zone is in the night part"


def test_one_answer_for_each_trip_and_one_for_what_stays_protected() -> None:
    found = by_subject(night_house(people=(ANN, CHILD)))
    assert list(found) == [
        "two rooms and hall", "Ann from bed to Kitchen", "Ann out in the morning",
    ]  # fmt: skip
    ids = [answer.subject_id for answer in answers(night_house(people=(ANN, CHILD)), CATALOGUE)]
    assert len(set(ids)) == len(ids)


def test_a_trip_that_rings_is_bad_and_one_that_does_not_is_good() -> None:
    rings = by_subject(night_house())["Ann from bed to Kitchen"]
    assert rings.verdict == "bad"
    assert rings.mends
    quiet = by_subject(night_house({"front-contact": "instant"}))["Ann from bed to Kitchen"]
    assert (quiet.verdict, quiet.mends) == ("good", ())
    assert quiet.reason == "no detector of the night part sees the storeys it passes"


def test_who_is_told_not_to_go_or_has_no_bed_is_named() -> None:
    told = ANN.model_copy(update={"passes": (Pass(part="night", may_not=("kitchen",)),)})
    lost = CHILD.model_copy(update={"bed": None})
    notes = by_subject(night_house(people=(told, lost)))["two rooms and hall"].notes
    assert "Ann is told not to be in any kitchen while the night part is set" in notes
    assert "not computable for Ann: no room of ours is told to be a toilet" in notes
    assert "not computable for Child: where they sleep is not told" in notes


def test_a_keyfob_by_the_bed_unsets_it() -> None:
    fob = KEYPAD.model_copy(update={"id": "fob", "sheet": "keyfob-radio"})
    devices = (*(one for one in night_house().devices if one.id != "keypad"), fob)
    found = by_subject(night_house(devices=devices))["Ann out in the morning"]
    assert (found.verdict, found.reason) == ("good", "the alarm is unset by the bed, with a keyfob")


def test_no_way_on_foot_is_said() -> None:
    site = night_house()
    walled = tuple(one for one in site.openings if one.id != "study-door")
    found = by_subject(site.model_copy(update={"openings": walled}))["Ann from bed to Kitchen"]
    assert found.reason == "not computable: no way on foot from Study to Kitchen"


def test_a_turned_house_answers_alike() -> None:
    # On the grid of a turned house a band covers other cells: within a cell's walk.
    for sample in ("terrace", "bungalow"):
        site = read_sample(sample)
        for one, other in zip(
            answers(site, CATALOGUE), answers(quarter_turned(site), CATALOGUE), strict=True
        ):
            assert (one.subject, one.verdict, one.measure) == (other.subject, other.verdict, other.measure)
            if one.estimate is not None and other.estimate is not None:
                assert one.estimate.value == pytest.approx(other.estimate.value, abs=0.25)
