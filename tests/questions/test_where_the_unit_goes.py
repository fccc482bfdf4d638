from __future__ import annotations

import pytest

from common.radio_house import CATALOGUE, device, long_house
from wardwright.model.edits import edited
from wardwright.questions.where_the_unit_goes import answers
from wardwright.questions.will_it_reach import answers as reaches
from wardwright.rules.mending import operations_of
from wardwright.store.samples import read_sample


def test_a_line_of_places_is_told_drawn_and_each_is_one_tap() -> None:
    site = read_sample("terrace")
    (found,) = answers(site, CATALOGUE)
    assert found.verdict == "bad"  # on the way in, and a bedroom beats it
    assert len(found.mends) >= 2
    drawn = [sketch for sketch in found.sketches if sketch.role == "suggestion"]
    assert len(drawn) == len(found.mends)
    assert [sketch.label[0] for sketch in drawn] == list("ABCDEFGH")[: len(drawn)]
    names = [part.name for part in found.parts]
    assert "where it is: worst radio margin" in names
    assert any(name.startswith("place A, ") and name.endswith("reached soonest after") for name in names)
    assert any("on the way in of the household" in note for note in found.notes)


def test_a_mend_carried_out_brings_what_it_promises() -> None:
    site = read_sample("terrace")
    (found,) = answers(site, CATALOGUE)
    for mend in found.mends:
        operations = operations_of(site, CATALOGUE, mend)
        assert operations is not None
        after = reaches(edited(site, operations), CATALOGUE)
        worst = min(one.estimate.value for one in after if one.estimate is not None)
        assert mend.gain is not None
        assert worst == pytest.approx(mend.gain.value)


def test_its_number_is_the_worst_of_question_6() -> None:
    site = read_sample("bungalow")
    (found,) = answers(site, CATALOGUE)
    assert found.estimate is not None
    margins = [
        one.estimate.value
        for one in reaches(site, CATALOGUE)
        if one.estimate is not None and "camera" not in one.subject_id
    ]
    assert found.estimate.value == min(margins)


def test_without_a_unit_or_a_radio_device_it_says_so() -> None:
    assert answers(read_sample("terrace").bare, CATALOGUE)[0].reason == "not computable: no control unit"
    (found,) = answers(long_house(), CATALOGUE)
    assert found.reason == "not computable: no radio device whose link to it can be worked out"
    assert found.verdict == "unknown"


def test_a_room_without_a_power_point_is_said_to_have_none() -> None:
    (found,) = answers(long_house(device("far", "water-radio", 23.0), outlets=[]), CATALOGUE)
    power = [part for part in found.parts if part.name.endswith("to a power point")]
    assert power
    assert all(part.estimate is None and part.reason for part in power)
