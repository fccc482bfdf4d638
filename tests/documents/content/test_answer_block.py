from __future__ import annotations

from wardwright.documents.content.answer_block import answer_block
from wardwright.documents.content.names import Names, names_of
from wardwright.documents.drawing.plan import base_plan
from wardwright.documents.drawing.recording import Text
from wardwright.documents.drawing.sheet import sheet_for
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.questions.answer import Answer, PartAnswer


def test_locks_and_lights_come_first(site: Site, answers: tuple[Answer, ...]) -> None:
    block = answer_block(answers[0], rank=1, names=names_of(site), bases=())
    assert block.mends[0].startswith("Fit a better lock")
    assert len(block.mends) == 3


def test_the_two_strongest_drivers_with_how_they_are_known(answers: tuple[Answer, ...]) -> None:
    block = answer_block(answers[1], rank=1, names=Names(), bases=())
    first, second = block.drivers
    assert (first.name, first.basis, first.share) == ("breaking the control unit", "default", 1.0)
    assert 0.0 < second.share < 1.0
    assert block.chance == "met in 53 % of draws"


def test_no_number_has_its_reason_and_no_chance(answers: tuple[Answer, ...]) -> None:
    block = answer_block(answers[6], rank=7, names=Names(), bases=())
    assert (block.value, block.range, block.chance) == ("no number", "", "")
    assert block.reason == "Nothing would notice."
    assert block.range_line is None


def test_the_names_that_the_race_gives_its_parts_are_known(answers: tuple[Answer, ...]) -> None:
    names = ("first notice", "sounder", "message outside", "control unit reached", "control unit broken")
    parts = tuple(PartAnswer(name=name, estimate=None, reason="x") for name in (*names, "holds before"))
    answer = answers[0].model_copy(update={"parts": parts})
    block = answer_block(answer, rank=1, names=Names(), bases=())
    assert block.strip is not None
    assert len([v for _, v in block.strip.own.strokes if isinstance(v, Text) and v.text == "x"]) == 5
    # What is no event of the race stands in the table beside it.
    assert [line.name for line in block.numbers] == ["holds before"]


def test_other_questions_have_numbers_instead(answers: tuple[Answer, ...]) -> None:
    block = answer_block(answers[3], rank=1, names=Names(), bases=())
    assert block.strip is None
    assert [(line.name, line.value, line.range) for line in block.numbers] == [
        ("surely seen, upright", "13.4 m\u00b2", "11.6 to 14.5 m\u00b2"),
        ("blind part", "2.2 m\u00b2", "1.1 to 4.0 m\u00b2"),
        ("crossing angle", "61\u00b0", "48\u00b0 to 74\u00b0"),
    ]


def test_noticed_where_they_come_in_has_no_idle_noughts(answers: tuple[Answer, ...]) -> None:
    nought = Estimate(value=0.0, low=0.0, high=0.0, unit="m")
    second = Estimate(value=9.3, low=9.3, high=16.0, unit="m")
    parts = (PartAnswer(name="undetected floor", estimate=nought), PartAnswer(name="second", estimate=second))
    answer = answers[2].model_copy(update={"estimate": nought, "parts": parts})
    block = answer_block(answer, rank=1, names=Names(), bases=())
    assert (block.value, block.range, block.measure) == ("at once", "", "noticed where they come in")
    assert block.range_line is None
    assert [line.name for line in block.numbers] == ["second"]


def test_the_heading_names_the_question(answers: tuple[Answer, ...]) -> None:
    blocks = [answer_block(answers[i], rank=1, names=Names(), bases=()) for i in (0, 2, 3)]
    assert [f"{block.heading} {block.subject}" for block in blocks] == [
        "The race from front door",
        "Undetected walk from back door",
        "What is seen by Living room movement detector",
    ]


def test_only_storeys_with_something_to_see_are_drawn(
    site: Site, catalogue: Catalogue, answers: tuple[Answer, ...]
) -> None:
    sheet = sheet_for(site)
    bases = tuple(base_plan(site, catalogue, storey_id=one.id, sheet=sheet) for one in site.storeys)
    block = answer_block(answers[1], rank=2, names=Names(), bases=bases)
    assert [drawing.key for drawing in block.drawings] == ["answer-2-ground"]
