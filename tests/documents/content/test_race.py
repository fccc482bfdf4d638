from __future__ import annotations

from wardwright.documents.content.race import event_of, race_strip, race_words
from wardwright.documents.drawing.recording import Text
from wardwright.model.estimate import Estimate
from wardwright.model.sketch import Sketch
from wardwright.questions.answer import Answer, PartAnswer


def test_each_part_of_a_race_is_somebodys_event() -> None:
    assert event_of("first notice") == ("alarm", "first notice")
    assert event_of("message outside") == ("alarm", "message outside")
    assert event_of("control unit broken") == ("intruder", "control unit broken")
    assert event_of("holds before the clock starts") is None


def test_another_question_has_no_strip(answers: tuple[Answer, ...]) -> None:
    assert race_strip(answers[2], key="a", horizon_s=480.0) is None
    assert race_strip(answers[0].model_copy(update={"parts": ()}), key="a", horizon_s=480.0) is None


def test_a_race_has_a_strip_with_all_its_events(answers: tuple[Answer, ...]) -> None:
    strip = race_strip(answers[6], key="a", horizon_s=480.0)
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


MESSAGE = "time in hand of the message before the control unit is broken"
Time = tuple[float, float, float]


def _race(hand: Time | None, *, measure: str = MESSAGE, **parts: Time | None) -> Answer:
    names = {
        "holds": "holds before the clock starts", "notice": "first notice", "sounder": "sounder",
        "message": "message outside", "reached": "control unit reached", "broken": "control unit broken",
    }  # fmt: skip

    def one(time: Time | None) -> Estimate | None:
        return None if time is None else Estimate(value=time[0], low=time[1], high=time[2], unit="s")

    return Answer(
        question=1, subject="door", subject_id="door", measure=measure, estimate=one(hand), verdict="bad",
        parts=tuple(PartAnswer(name=names[name], estimate=one(time), reason="none") for name, time in parts.items()),
        sketches=(Sketch(role="notice", storey="g", points=((0.0, 0.0),), label="noticed by Hall movement"),),
    )  # fmt: skip


def _words(answer: Answer) -> list[str]:
    return [text.replace("\u00a0", " ") for text in race_words(answer, horizon_s=480.0)]


def test_what_happens_is_told_in_its_order() -> None:
    race = _race(
        (-0.2, -7, 3), holds=(30, 10, 60), notice=(8.3, 5, 12), sounder=(8.8, 6, 13), message=(19.3, 13, 27),
        reached=(9.1, 7, 12), broken=(19.1, 14, 26),
    )  # fmt: skip
    assert _words(race) == [
        "The opening holds for 30 s (10 to 60 s); then the clock starts.",
        (
            "Noticed after 8.3 s by Hall movement; sounder 0.5 s later; control unit reached at 9.1 s; "
            "control unit broken at 19.1 s; message out at 19.3 s."
        ),
        "The message is too late by 0.2 s.",
    ]


def test_a_sounder_that_does_not_follow_the_notice_has_its_own_time() -> None:
    race = _race((-60, -70, -50), notice=(0, 0, 0), sounder=(31, 30, 33), reached=(0.5, 0.4, 0.6))
    assert _words(race)[0] == (
        "Noticed at once by Hall movement; control unit reached at 0.5 s; sounder loud at 31.0 s."
    )


def test_what_never_happens_is_said_last_and_no_outcome_is_made_up() -> None:
    assert _words(_race(None, notice=None, sounder=None, message=None, reached=(14, 11, 19))) == [
        "Control unit reached at 14.0 s; nothing notices; no sounder sounds; no message leaves."
    ]
    late = _race((-480, -480, -480), notice=(480, 480, 480), message=(480, 480, 480), broken=(9, 8, 10))
    assert _words(late)[-1] == "The message never comes."


def test_the_need_that_decides_is_named() -> None:
    sounder = "time in hand of the sounder before the control unit is reached"
    race = _race((2.0, 1, 3), measure=sounder, notice=(1, 1, 1), sounder=(2, 2, 2))
    assert _words(race)[-1] == "The sounder is in time, with 2.0 s in hand."


def test_a_range_to_the_end_of_the_stay_has_no_end() -> None:
    strip = race_strip(
        _race((-1, -480, 3), notice=(8.3, 5.1, 480), reached=(9, 8, 10)), key="a", horizon_s=480.0
    )
    assert strip is not None
    texts = [verb.text for _, verb in strip.own.strokes if isinstance(verb, Text)]
    assert "8.3 s (5.1 s to never)" in texts


def test_another_question_has_no_words(answers: tuple[Answer, ...]) -> None:
    assert race_words(answers[2], horizon_s=480.0) == ()
