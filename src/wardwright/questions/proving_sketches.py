"""What a test on site draws on the plan: its walk, or the place where it is done and what the model expects."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from wardwright.model.record import Point2
from wardwright.model.sketch import Sketch
from wardwright.questions import (
    entry_and_exit_times,
    heard_at_pillows,
    night_trips,
    what_it_sees,
    what_it_shows,
    will_it_reach,
)
from wardwright.questions.answer import Answer
from wardwright.questions.between_states import DueTest, TestKind
from wardwright.questions.walk_past import WalkTest
from wardwright.questions.walking_round import WalkingRound

ASKED_OF: dict[TestKind, int] = {
    "view": what_it_sees.NUMBER,
    "beyond view": what_it_sees.NUMBER,
    "radio": will_it_reach.NUMBER,
    "sound": heard_at_pillows.NUMBER,
    "entry": entry_and_exit_times.NUMBER,
    "exit": entry_and_exit_times.NUMBER,
    "night trip": night_trips.NUMBER,
    "picture": what_it_shows.NUMBER,
}
"""The question whose answer says what a test is to show. Other tests have none: they are done as a sheet says."""


def expected_of(test: DueTest, answers: Iterable[Answer]) -> Answer | None:
    """The answer that says what a test is to show; None: none does."""
    number = ASKED_OF.get(test.kind)
    return next((one for one in answers if (one.question, one.subject_id) == (number, test.about)), None)


def place_of(found: WalkingRound, stop: int) -> tuple[Sketch, ...]:
    """The sign of a stop of the round, by its number from 1; empty where nobody knows where it is. [-]"""
    return tuple(one for one in found.sketches if one.role == "goal" and one.label == str(stop))


def sketches_of_test(
    walks: Sequence[WalkTest], answer: Answer | None, *, place: tuple[Sketch, ...]
) -> tuple[Sketch, ...]:
    """What one test draws.

    Parameters
    ----------
    walks : sequence of WalkTest
        Those that it is made of; empty: it is none past a detector.
    answer : Answer or None
        What the model expects of it.
    place : tuple of Sketch
        Where one stands to do it.

    Returns
    -------
    tuple of Sketch
        The walks over what the detector is taken to see; else what the answer draws, and the place.
    """
    drawn = () if answer is None else answer.sketches
    if not walks:
        return (*(one for one in drawn if one.role != "goal"), *place)
    floors = tuple(one for one in drawn if one.role in ("seen", "possibly-seen"))
    return (*floors, *(sketch for walk in walks for sketch in _walked(walk)))


def _walked(walk: WalkTest) -> tuple[Sketch, ...]:
    seconds = walk.length_m / walk.pace_m_s
    way = Sketch(role="walk", storey=walk.storey, points=(walk.from_m, walk.to_m), times_s=(0.0, seconds))
    if walk.within_m is None:
        return (way,)
    return (way, Sketch(role="notice", storey=walk.storey, points=(_along(walk),)))


def _along(walk: WalkTest) -> Point2:
    """Where it is to have noticed at the latest."""
    share = min((walk.within_m or 0.0) / walk.length_m, 1.0)
    (x0, y0), (x1, y1) = walk.from_m, walk.to_m
    return (x0 + share * (x1 - x0), y0 + share * (y1 - y0))
