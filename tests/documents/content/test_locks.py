from __future__ import annotations

from wardwright.documents.content.locks import locks_and_lights
from wardwright.documents.content.names import Names
from wardwright.model.estimate import Estimate
from wardwright.questions.answer import Answer
from wardwright.rules.finding import Mend

GAIN = Estimate(value=150.0, low=60.0, high=290.0, unit="s")
OTHER = Estimate(value=170.0, low=90.0, high=297.0, unit="s")


def _answer(*mends: Mend) -> Answer:
    return Answer(
        question=1, subject="a", subject_id="a", measure="m", estimate=None, verdict="bad", mends=mends
    )


def _lock(where: str, what: str, gain: Estimate | None) -> Mend:
    return Mend(action="change-lock", subject=where, values=(("what", what),), gain=gain)


def test_equal_gains_are_one_sentence() -> None:
    answers = (
        _answer(_lock("front door", "lock", GAIN), Mend(action="add-light", subject="front door")),
        _answer(_lock("garden door", "glazing", OTHER)),
        _answer(_lock("kitchen window", "lock", GAIN), _lock("front door", "lock", GAIN)),
        _answer(Mend(action="add-light", subject="garden door")),
    )
    assert locks_and_lights(answers, Names()) == (
        "Fit better locks at front door and kitchen window: each would hold longer by 150 s (60 to 290 s).",
        "Fit a better pane at garden door: it would hold longer by 170 s (90 to 297 s).",
        "Add a light that comes on by itself at front door and garden door.",
    )


def test_another_gain_is_another_sentence() -> None:
    answers = (_answer(_lock("a", "lock", GAIN), _lock("b", "lock", OTHER), _lock("c", "lock", None)),)
    assert [text.split(":")[0] for text in locks_and_lights(answers, Names())] == [
        "Fit a better lock at a",
        "Fit a better lock at b",
        "Fit a better lock at c.",
    ]


def test_a_named_lock_keeps_its_name() -> None:
    mends = [Mend(action="change-lock", subject=one, values=(("lock", "rc2"),)) for one in "ab"]
    assert locks_and_lights((_answer(*mends),), Names()) == ("Fit better locks (rc2) at a and b.",)


def test_nothing_to_fit_is_no_sentence() -> None:
    assert locks_and_lights((_answer(),), Names()) == ()
