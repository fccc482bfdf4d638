"""Question 20 where there is an earlier state: which answers fail now, and what must be tested again."""

from __future__ import annotations

from typing import NamedTuple

from wardwright.model.catalogue import Catalogue
from wardwright.model.changes import differences
from wardwright.model.site import Site
from wardwright.questions.answer import Answer, PartAnswer, Verdict
from wardwright.questions.compared import (
    ComparedAnswer,
    ComparedFinding,
    State,
    compared,
    findings_compared,
)
from wardwright.questions.tests_due import tests_due
from wardwright.questions.walking_round import RoundStop, WalkingRound, walking_round
from wardwright.questions.what_changed import MEASURE, NUMBER
from wardwright.rules.pillows import pillows
from wardwright.rules.registry import exactly


class Changes(NamedTuple):
    """What became of all that is said of a house."""

    answers: tuple[ComparedAnswer, ...]
    findings: tuple[ComparedFinding, ...]
    tests: WalkingRound


def changes_since(before: State, after: State, catalogue: Catalogue) -> Changes:
    """Hold two states of a house against each other.

    Parameters
    ----------
    before, after : State
        Both answered by the same program.
    catalogue : Catalogue
        What devices are, how fast people walk, how long tests take.

    Returns
    -------
    Changes
        Question 20 itself is not among the answers.
    """
    old, new = (tuple(one for one in state.answers if one.question != NUMBER) for state in (before, after))
    return Changes(
        answers=compared(old, new),
        findings=findings_compared(before.findings, after.findings),
        tests=walking_round(after.site, catalogue, tests_due(before, after, catalogue)),
    )


def answer_since(before: State, after: State, catalogue: Catalogue, *, since: str) -> Answer:
    """Answer question 20 about a house of which an earlier state is known.

    Parameters
    ----------
    before, after : State
        Both answered by the same program.
    catalogue : Catalogue
        As for `changes_since`.
    since : str
        What the earlier state is called, such as `revision 3, as signed`.

    Returns
    -------
    Answer
        How long it takes to repeat the tests. Not met where an answer fails that did not, or a rule that must be
        mended; thin where tests are to be repeated; met where none is.
    """
    found = changes_since(before, after, catalogue)
    failing = [one for one in found.answers if one.fails_now]
    came = [one for one in found.findings if one.course == "came" and one.finding.severity == "must mend"]
    tests = sum(len(stop.tests) for stop in found.tests.stops)
    verdict: Verdict = "bad" if failing or came else "thin" if tests else "good"
    counts = (
        ("of the house that are others", len(differences(before.site, after.site)), "things"),
        ("that fail now", len(failing), "answers"),
        ("that fail no more", sum(one.fails_no_more for one in found.answers), "answers"),
        ("beyond the range that they had", sum(one.is_beyond for one in found.answers), "answers"),
        ("of siting that came and must be mended", len(came), "faults"),
        ("to repeat", tests, "tests"),
    )
    return Answer(
        question=NUMBER,
        subject=after.site.name,
        subject_id="site",
        measure=MEASURE,
        estimate=found.tests.minutes,
        verdict=verdict,
        parts=(
            *(
                PartAnswer(name=f"{unit} {name}", estimate=exactly(number, unit, "measured"))
                for name, number, unit in counts
            ),
            PartAnswer(name="walking from test to test", estimate=found.tests.walking),
        ),
        notes=(f"held against {since}", *_failing(failing), *_stops(after.site, found.tests)),
        sketches=found.tests.sketches,
    )


def _failing(failing: list[ComparedAnswer]) -> tuple[str, ...]:
    return tuple(f"fails now: question {one.latest.question}, {one.latest.subject}" for one in failing)


def _stops(site: Site, tests: WalkingRound) -> tuple[str, ...]:
    """Each stop of the round with what is tested there."""
    names = {one.id: one.name for one in site.openings} | {one.id: one.name for one in site.people}
    names |= {one.id: one.name for one in site.pets} | {one.id: one.name for one in pillows(site)}
    names |= {one.id: one.name for one in site.devices}
    return tuple(
        f"stop {number}: "
        + "; ".join(
            f"{names.get(about, about)}: {', '.join(kinds)}" for about, kinds in _by_thing(stop).items()
        )
        for number, stop in enumerate(tests.stops, start=1)
    )


def _by_thing(stop: RoundStop) -> dict[str, list[str]]:
    found: dict[str, list[str]] = {}
    for one in stop.tests:
        found.setdefault(one.about, []).append(one.kind)
    return found
