from __future__ import annotations

import math

import pytest

from wardwright.documents.content.headline import headline, horizon_of, is_nought, measure_of, time_words
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.questions.answer import Answer
from wardwright.store.catalogue import load_catalogue


def _answer(question: int, estimate: Estimate | None) -> Answer:
    return Answer(
        question=question, subject="a", subject_id="a", measure="m", estimate=estimate, verdict="thin"
    )


@pytest.mark.parametrize(
    ("question", "estimate", "words"),
    [
        (5, (0.0, 0.0, 0.0, "m"), ("at once", "")),
        (5, (0.0, 0.0, 1.53, "m"), ("at once", "or within 1.5 m")),
        (5, (0.2, 0.0, 1.5, "m"), ("0.2 m", "0.0 to 1.5 m")),
        (1, (0.0, -1.0, 1.0, "s"), ("0.0 s", "-1.0 to 1.0 s")),
        (1, (-12.0, -480.0, 3.0, "s"), ("-12 s", "never to 3 s")),
        (1, (-480.0, -480.0, -480.0, "s"), ("never", "")),
        (11, (0.48, 0.4, 0.5, "-"), ("48 %", "40 to 50 %")),
    ],
)
def test_the_deciding_number_in_words(
    question: int, estimate: tuple[float, float, float, str], words: tuple[str, str]
) -> None:
    value, low, high, unit = estimate
    one = Estimate(value=value, low=low, high=high, unit=unit)
    assert headline(_answer(question, one), horizon_s=480.0, is_plain=True) == words


def test_no_number_has_no_words() -> None:
    assert headline(_answer(1, None), horizon_s=math.inf) == ("", "")


def test_what_is_noticed_at_once_is_told_by_where() -> None:
    assert measure_of(_answer(5, None), "at once") == "noticed where they come in"
    assert measure_of(_answer(5, None), "3.1 m") == "m"


def test_nought_is_what_is_printed_as_nought() -> None:
    assert is_nought(-0.04, Estimate(value=0.0, low=-40.0, high=0.0, unit="s"))
    assert not is_nought(0.3, Estimate(value=0.3, low=0.0, high=40.0, unit="s"))


def test_a_time_as_late_as_the_stay_is_never() -> None:
    times = {
        "at once": (0.0, 0.0, 0.0),
        "8.3 s (5.1 to 9.0 s)": (8.3, 5.1, 9.0),
        "8.3 s (5.1 s to never)": (8.3, 5.1, 480.0),
        "never (5 s to never)": (480.0, 5.1, 480.0),
        "never": (480.0, 480.0, 480.0),
    }
    for words, (value, low, high) in times.items():
        assert time_words(Estimate(value=value, low=low, high=high, unit="s"), horizon_s=480.0) == words


def test_the_horizon_is_the_stay_where_it_is_known(catalogue: Catalogue) -> None:
    full = load_catalogue()
    assert horizon_of(full) == full.figure("stay").value
    assert horizon_of(catalogue) == math.inf  # it has no such figure
    assert horizon_of(None) == math.inf
