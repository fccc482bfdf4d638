"""The table of questions: number, name, and the function that answers it."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from typing import NamedTuple

from wardwright.errors import InputError
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions import (
    battery_ends,
    entry_and_exit_times,
    fire_and_water_distances,
    night_trips,
    one_thing_lost,
    pets_in,
    race_from_opening,
    reach_from_outside,
    undetected_walk,
    what_changed,
    what_is_heard,
    what_it_costs,
    what_it_sees,
    what_it_shows,
    when_disturbed,
    where_the_unit_goes,
    will_it_reach,
    zone_behaviours,
)
from wardwright.questions.answer import WORST_FIRST, Answer
from wardwright.rules.registry import Follows


class Question(NamedTuple):
    """One row of the table."""

    number: int
    name: str
    answers: Callable[[Site, Catalogue], tuple[Answer, ...]]
    in_hand: Callable[[Site, Catalogue], tuple[Answer, ...]] | None = None
    """Its answers while a thing is still in the hand that moves it: without mends; None: they wait until it is put
    down."""
    follows: Follows = "devices"
    """With what in the hand; a question that hangs on the whole house waits until a wall is put down."""
    more_is_better: bool = False
    """Whether the larger number is the better one: by it answers are ranked, and two states of a house compared."""


QUESTIONS: tuple[Question, ...] = (
    Question(
        1,
        "Through this opening: first notice, sounder, message; can the control unit be reached and broken first?",
        race_from_opening.answers,
        in_hand=race_from_opening.without_mends,
        follows="walls and devices",
        more_is_better=True,
    ),
    Question(
        2,
        "Where should the control unit go: radio, race, view from outside, entry route, distance to a socket?",
        where_the_unit_goes.answers,
        more_is_better=True,
    ),
    Question(
        3,
        "What entry and exit time does this household need, door by door, and what does each extra 5 s give?",
        entry_and_exit_times.answers,
    ),
    Question(4, "Which zone behaviour should each device have, and what breaks it?", zone_behaviours.answers),
    Question(
        5,
        "How far, and for how long, can someone move undetected from each way in; is a target reached first?",
        undetected_walk.answers,
        in_hand=undetected_walk.answers,
        follows="walls and devices",
    ),
    Question(
        6,
        "Will the radio work here, with doors shut: level, noise, margin, chance of a margin under the limit?",
        will_it_reach.answers,
        in_hand=will_it_reach.without_mends,
        more_is_better=True,
    ),
    Question(
        8,
        "At night, part set: can each reach toilet, kitchen, child without tripping it; what is still protected?",
        night_trips.answers,
        more_is_better=True,
    ),
    Question(
        9,
        "When, in dates and clock hours, will sun, a hot thing or headlights disturb this detector?",
        when_disturbed.answers,
    ),
    Question(
        11,
        "What does this movement detector really see?",
        what_it_sees.answers,
        in_hand=what_it_sees.answers,
        follows="walls and devices",
    ),
    Question(
        12,
        "If one thing is broken or blocked, what still works and for how long?",
        one_thing_lost.answers,
        more_is_better=True,
    ),
    Question(
        13,
        "What level reaches each pillow with doors shut, each ear near a sounder, the street, the neighbours?",
        what_is_heard.answers,
        in_hand=what_is_heard.without_mends,
        more_is_better=True,
    ),
    Question(
        14,
        "Which upper windows and roofs can be reached, and how?",
        reach_from_outside.answers,
        in_hand=reach_from_outside.without_mends,
        follows="walls and devices",
        more_is_better=True,
    ),
    Question(
        15,
        "When does each battery end, and can they be done in one visit?",
        battery_ends.answers,
        more_is_better=True,
    ),
    Question(16, "What will the job take and cost, and which choice moves it?", what_it_costs.answers),
    Question(
        17,
        "With the pets in, which detectors can stay?",
        pets_in.answers,
        more_is_better=True,
    ),
    Question(
        18,
        "Are smoke, heat, CO and water devices within the published distances? (a check, never a fire design)",
        fire_and_water_distances.answers,
        more_is_better=True,
    ),
    Question(
        19,
        "What will this camera show at the gate, and how much beyond the boundary does it see?",
        what_it_shows.answers,
        in_hand=what_it_shows.without_mends,
        more_is_better=True,
    ),
    Question(
        20,
        "Something changed: which answers fail now, and what must be tested again?",
        what_changed.answers,
    ),
)

MORE_IS_BETTER = frozenset(question.number for question in QUESTIONS if question.more_is_better)
"""A larger number is worse where it is a distance walked unseen or a blind share."""
_RANK = {verdict: rank for rank, verdict in enumerate(WORST_FIRST)}


def ask(site: Site, catalogue: Catalogue, numbers: Sequence[int] | None = None) -> tuple[Answer, ...]:
    """Answer questions, worst first.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue
        Sheets and figures.
    numbers : sequence of int, optional
        Which questions; all of the table if left out.

    Returns
    -------
    tuple of Answer
        By verdict (bad, thin, unknown, good), then by question, then the smaller value, then by subject.

    Raises
    ------
    InputError
        If a number is not in the table.
    """
    known = {question.number: question for question in QUESTIONS}
    chosen = sorted(known) if numbers is None else sorted(set(numbers))
    found: list[Answer] = []
    for number in chosen:
        if number not in known:
            raise InputError(
                f"question {number} is not answered by this version",
                where="question",
                cure="Ask one of " + ", ".join(str(one) for one in sorted(known)),
            )
        found.extend(known[number].answers(site, catalogue))
    return worst_first(found)


def ask_in_hand(site: Site, catalogue: Catalogue, *, has_house_moved: bool = False) -> tuple[Answer, ...]:
    """Answer, worst first, what is asked many times a second while something is dragged.

    Parameters
    ----------
    site : Site
        The house, with the thing where the hand has it.
    catalogue : Catalogue
        Sheets and figures.
    has_house_moved : bool, default False
        Whether a wall is in the hand, or anything else of the house itself.

    Returns
    -------
    tuple of Answer
        Of the questions that do not wait until the thing is put down, and without what would mend them.
    """
    quick = (
        question.in_hand
        for question in QUESTIONS
        if question.in_hand is not None and (not has_house_moved or question.follows == "walls and devices")
    )
    return worst_first([answer for answers in quick for answer in answers(site, catalogue)])


def worst_first(answers: Iterable[Answer]) -> tuple[Answer, ...]:
    """Answers by verdict (bad, thin, unknown, good), then by question, then the smaller value, then by subject."""
    return tuple(sorted(answers, key=_rank))


def _rank(answer: Answer) -> tuple[int, int, float, str]:
    value = answer.estimate.value if answer.estimate is not None else float("-inf")
    worse_is_less = value if answer.question in MORE_IS_BETTER else -value
    if answer.estimate is None:
        worse_is_less = float("-inf")
    return (_RANK[answer.verdict], answer.question, worse_is_less, answer.subject_id)
