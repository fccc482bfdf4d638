import pytest

from common.radio_house import CATALOGUE, device, long_house
from common.turning import quarter_turned
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.table import ask
from wardwright.questions.will_it_reach import answers, verdict_of, without_mends
from wardwright.store.samples import read_sample

FAR = device("far", "water-radio", 23.0)


def answer(site: Site, name: str = "far") -> Answer:
    return next(one for one in answers(site, CATALOGUE) if one.subject_id == name)


def test_each_radio_device_has_its_margin_with_range_drivers_and_chance() -> None:
    found = answer(long_house(FAR))
    assert found.estimate is not None
    assert found.estimate.unit == "dB"
    assert found.estimate.low < found.estimate.value < found.estimate.high
    assert len(found.estimate.drivers) >= 2
    assert found.chance is not None
    names = [part.name for part in found.parts]
    assert names[:3] == ["level that arrives", "noise at the receiver", "chance of a margin under 10 dB"]
    under = next(part.estimate for part in found.parts if part.name.startswith("chance"))
    assert under is not None
    assert under.value == pytest.approx(1.0 - found.chance)


def test_the_walls_that_cost_most_are_named_and_drawn() -> None:
    found = answer(long_house(FAR))
    assert any(note.startswith("takes most: the wall between Room") for note in found.notes)
    assert {sketch.role for sketch in found.sketches} == {"radio-path", "radio-cost"}


@pytest.mark.parametrize(
    ("low", "value", "expected"), [(12.0, 30.0, "good"), (5.0, 20.0, "thin"), (-9.0, 4.0, "bad")]
)
def test_met_over_the_whole_range_at_the_likely_value_or_not(low: float, value: float, expected: str) -> None:
    assert verdict_of(Estimate(value=value, low=low, high=40.0, unit="dB"), 10.0) == expected


def test_behind_metal_it_is_bad_and_a_repeater_is_offered() -> None:
    found = answer(long_house(FAR, build="steel-sheet"))
    assert found.verdict in ("bad", "thin")
    assert "add-device" in [mend.action for mend in found.mends]
    while_dragged = next(
        one
        for one in without_mends(long_house(FAR, build="steel-sheet"), CATALOGUE)
        if one.subject_id == "far"
    )
    assert while_dragged.mends == ()
    assert while_dragged.estimate == found.estimate


def test_walls_of_unknown_make_widen_the_range_and_are_told() -> None:
    known, unknown = (answer(long_house(FAR, build=build)) for build in ("brick", "unknown"))
    assert known.estimate is not None
    assert unknown.estimate is not None
    width = [one.high - one.low for one in (known.estimate, unknown.estimate)]
    assert width[1] > width[0] + 3.0
    assert any("not known, so the range is wide" in note for note in unknown.notes)


def test_a_silent_sheet_is_not_computable_and_never_passed() -> None:
    rows = tuple(
        row.model_copy(update={"radio": None}) if row.id == "water-radio" else row for row in CATALOGUE.sheets
    )
    found = answers(long_house(FAR), CATALOGUE.model_copy(update={"sheets": rows}))
    assert [(one.verdict, one.reason) for one in found] == [
        ("unknown", "not computable: the sheet of Far does not say what its radio sends")
    ]


def test_a_house_without_radio_says_so() -> None:
    found = answers(read_sample("one-room").bare, CATALOGUE)
    assert [one.reason for one in found] == ["not computable: no radio device"]


def test_a_keyfob_answers_for_its_worst_place_and_tells_all() -> None:
    found = answer(read_sample("bungalow"), "first-keyfob")
    places = [part for part in found.parts if part.name.startswith("margin from")]
    assert len(places) == 4
    assert found.estimate is not None
    assert found.estimate.value == min(part.estimate.value for part in places if part.estimate is not None)


def test_one_device_says_that_its_reading_would_teach_most() -> None:
    found = answers(read_sample("bungalow"), CATALOGUE)
    teaching = [one for one in found if any("teach most" in note for note in one.notes)]
    assert len(teaching) == 1


def test_readings_are_told_as_measured_and_narrow_all() -> None:
    more = device("more", "water-radio", 20.0, 3.0)
    read = [{"id": "r", "device": "more", "receiver": "unit", "level_dbm": -90.0}]
    before, after = answer(long_house(FAR, more)), answer(long_house(FAR, more, readings=read))
    assert before.estimate is not None
    assert after.estimate is not None
    assert after.estimate.high - after.estimate.low < before.estimate.high - before.estimate.low
    assert after.estimate.basis == "measured"


def test_a_quarter_turn_changes_no_margin() -> None:
    site = read_sample("bungalow")
    plain, turned = (answers(one, CATALOGUE) for one in (site, quarter_turned(site)))
    for one, other in zip(plain, turned, strict=True):
        assert (one.estimate is None) == (other.estimate is None)
        if one.estimate is not None and other.estimate is not None:
            assert other.estimate.value == pytest.approx(one.estimate.value, abs=1e-6)
            assert other.estimate.low == pytest.approx(one.estimate.low, abs=1e-6)


def test_the_smaller_margin_stands_first() -> None:
    found = ask(read_sample("bungalow"), CATALOGUE, (6,))
    margins = [one.estimate.value for one in found if one.verdict == "good" and one.estimate is not None]
    assert margins == sorted(margins)
