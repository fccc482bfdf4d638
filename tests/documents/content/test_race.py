from __future__ import annotations

from wardwright.documents.content.race import event_of, race_strip
from wardwright.documents.drawing.recording import Text
from wardwright.questions.answer import Answer


def test_each_part_of_a_race_is_somebodys_event() -> None:
    assert event_of("first notice") == ("alarm", "first notice")
    assert event_of("message outside") == ("alarm", "message outside")
    assert event_of("control unit broken") == ("intruder", "control unit broken")
    assert event_of("holds before the clock starts") is None


def test_another_question_has_no_strip(answers: tuple[Answer, ...]) -> None:
    assert race_strip(answers[2], key="a") is None
    assert race_strip(answers[0].model_copy(update={"parts": ()}), key="a") is None


def test_a_race_has_a_strip_with_all_its_events(answers: tuple[Answer, ...]) -> None:
    strip = race_strip(answers[6], key="a")
    assert strip is not None
    texts = [verb.text for _, verb in strip.own.strokes if isinstance(verb, Text)]
    assert texts.count("nothing notices") == 3
    for name in (
        "first notice",
        "sounder loud",
        "message outside",
        "control unit reached",
        "control unit broken",
    ):
        assert name in texts
        assert name in strip.description
