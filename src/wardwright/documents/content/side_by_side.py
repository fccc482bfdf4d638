"""Two states of a house side by side: what each is worth, one race of both drawn, and all that differs."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from wardwright.documents.content.comparison import Comparison
from wardwright.documents.content.picture import race_picture
from wardwright.documents.content.plans import whole_plans
from wardwright.documents.content.signed import ProgramTold
from wardwright.documents.content.wording import VERDICTS
from wardwright.documents.drawing.plan import plan_with
from wardwright.documents.drawing.recording import Drawing
from wardwright.model.catalogue import Catalogue
from wardwright.questions.answer import Answer
from wardwright.questions.changes_since import Changes
from wardwright.questions.compared import ComparedAnswer, State
from wardwright.questions.what_changed import NUMBER as WHAT_CHANGED

RACE = 1
SEES = 11


@dataclass(frozen=True, slots=True)
class SideBySide:
    """Everything on the page, in its order."""

    names: tuple[str, str]
    """What the earlier and the later state are called."""
    tally: tuple[tuple[str, int, int], ...]
    """Each verdict, and how many answers have it in the earlier and in the later state."""
    must_mend: tuple[int, int]
    """How many findings must be mended."""
    races: tuple[Drawing, ...]
    """The race that differs most, of both; empty where none has a number in both."""
    told: Comparison
    program: ProgramTold | None
    rounds: tuple[Drawing, ...]
    """The storeys with the walking round of the tests to repeat."""


def side_by_side(
    before: State,
    after: State,
    catalogue: Catalogue,
    *,
    found: Changes,
    told: Comparison,
    names: tuple[str, str],
    program: ProgramTold | None = None,
) -> SideBySide:
    """Put two states of a house side by side.

    Parameters
    ----------
    before, after : State
        The two states.
    catalogue : Catalogue
        Sheets.
    found : Changes
        What became of all that is said of the house.
    told : Comparison
        The same in words.
    names : tuple of str
        What the two are called.
    program : ProgramTold, optional
        What the program gives otherwise than when the earlier state was signed.

    Returns
    -------
    SideBySide
        Nothing in it is HTML.
    """
    counts = [Counter(one.verdict for one in _told_of(state)) for state in (before, after)]
    return SideBySide(
        names=names,
        tally=tuple(
            (word, counts[0][verdict], counts[1][verdict]) for verdict, (word, _) in VERDICTS.items()
        ),
        must_mend=_must_mend(before, after),
        races=races(before, after, catalogue, answers=found.answers),
        told=told,
        program=program,
        rounds=tuple(
            plan_with(
                base,
                found.tests.sketches,
                key=f"round-{base.storey}",
                title=f"{base.name}: tests to repeat",
                description=f"Plan of {base.name} at 1:{base.sheet.scale} with the round of the tests to repeat.",
            )
            for base in whole_plans(after.site, catalogue)
            if any(one.storey == base.storey for one in found.tests.sketches)
        ),
    )


def _told_of(state: State) -> tuple[Answer, ...]:
    return tuple(one for one in state.answers if one.question != WHAT_CHANGED)


def _must_mend(before: State, after: State) -> tuple[int, int]:
    old, new = (
        sum(one.severity == "must mend" and not one.accepted for one in state.findings)
        for state in (before, after)
    )
    return old, new


def races(
    before: State, after: State, catalogue: Catalogue, *, answers: tuple[ComparedAnswer, ...]
) -> tuple[Drawing, ...]:
    """The race that differs most between two states, drawn in both.

    Parameters
    ----------
    before, after : State
        The two states.
    catalogue : Catalogue
        Sheets.
    answers : tuple of ComparedAnswer
        What differs.

    Returns
    -------
    tuple of Drawing
        Two, each with its strip of time; none where no race has a number and a walk in both.
    """
    found = [
        one
        for one in answers
        if one.latest.question == RACE
        and one.by is not None
        and _has_walk(one.before)
        and _has_walk(one.after)
    ]
    most = max(found, key=lambda one: (abs(one.by or 0.0), one.latest.subject_id), default=None)
    if most is None or most.before is None or most.after is None:
        return ()
    drawn = []
    for state, answer, key in ((before, most.before, "before"), (after, most.after, "after")):
        seen = [one for one in state.answers if one.question == SEES]
        drawn.append(race_picture(state.site, catalogue, answer, also=seen)._replace(key=f"race-{key}"))
    return tuple(drawn)


def _has_walk(answer: Answer | None) -> bool:
    return (
        answer is not None
        and answer.estimate is not None
        and any(one.role == "walk" and len(one.points) > 1 for one in answer.sketches)
    )
