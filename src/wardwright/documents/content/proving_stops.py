"""The round of tests on the screen: stop by stop in walking order, each test with all that is done and expected."""

from __future__ import annotations

from collections.abc import Sequence

from wardwright.documents.content.names import Names
from wardwright.documents.content.proving_plan_words import (
    HOW_TO_WALK,
    MANNERS,
    expected_words,
    key_of_test,
    key_of_walk,
    walks_of,
)
from wardwright.documents.content.quantities import quantity, sentence, value_words, with_range
from wardwright.documents.content.round_told import NO_WAY, plan_names, told_round
from wardwright.documents.drawing.devices import device_tags
from wardwright.model.catalogue import Catalogue
from wardwright.model.record import Record
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.between_states import DueTest
from wardwright.questions.proving_plan import ProvingPlan
from wardwright.questions.proving_sketches import expected_of
from wardwright.questions.walk_past import Expected, WalkTest

TIMED = {"entry": "coming in", "exit": "leaving"}
"""How the names of the parts end that a test by the clock is held against."""
WAIT = "stay out of its sight for {wait} before each walk, so that it does not sleep"
MISSING = "No walk could be laid out, since what it sees is not known: {names}."


class ProveWalk(Record):
    """One walk past a movement detector."""

    key: str
    """What it is known by: its test, how it is walked, by what, and how fast."""
    how: str
    pace: str
    """How fast, and how far."""
    expects: Expected
    expected: str
    """By the model, as a sentence."""
    is_wanted: bool
    """Whether the design wants that; False: it is not to be so."""


class ProveTest(Record):
    """One test of one thing."""

    key: str
    """What it is known by: its kind and what it is about."""
    about: str
    tag: str
    """Letters on the plan of the device that it is about; empty: it is about something else."""
    what: str
    wait: str
    """What is waited for before each walk; empty: nothing."""
    expected: str
    """What the model expects; empty: what is done says it."""
    walks: tuple[ProveWalk, ...]
    """Empty: it is done once, as it says."""


class ProveStop(Record):
    """One place of the round, and what is tested there."""

    number: int
    storey: str
    """Empty where nobody knows."""
    where: str
    walk: str
    """How long it takes on foot from the stop before."""
    tests: tuple[ProveTest, ...]


class ProveRound(Record):
    """All tests in the order in which to walk to them."""

    heading: str
    begins: str
    how: str
    stops: tuple[ProveStop, ...]
    missing: str
    """Detectors that no walk could be laid out for; empty: there is none."""


def walks_in(plan: ProvingPlan, test: DueTest) -> tuple[WalkTest, ...]:
    """The walks that a test is made of; empty: it is done otherwise."""
    return walks_of(plan, test.about, is_view=test.kind == "view") if "view" in test.kind else ()


def proving_stops(
    plan: ProvingPlan, site: Site, catalogue: Catalogue, *, answers: Sequence[Answer]
) -> ProveRound:
    """Put the round of tests into words.

    Parameters
    ----------
    plan : ProvingPlan
        It.
    site : Site
        The design.
    catalogue : Catalogue
        For names.
    answers : sequence of Answer
        What the model expects of radio, sound, times, nights and pictures.

    Returns
    -------
    ProveRound
        Every test once, in walking order.
    """
    names, told = plan_names(site, catalogue), told_round(plan.round, site, catalogue)
    tags = device_tags(site, catalogue)
    stops = tuple(
        ProveStop(
            number=one.number,
            storey=stop.storey,
            where=one.where,
            walk=one.walk if one.walk == NO_WAY else f"{one.walk} on foot",
            tests=tuple(
                ProveTest(
                    key=key_of_test(test),
                    about=test.about,
                    tag=tags[test.about].text if test.about in tags else "",
                    what=sentence(words.what),
                    wait=_wait(walks_in(plan, test)),
                    expected=_expected(test, answers),
                    walks=tuple(_walk(test, walk, names) for walk in walks_in(plan, test)),
                )
                for test, words in zip(stop.tests, one.tests, strict=True)
            ),
        )
        for stop, one in zip(plan.round.stops, told.stops, strict=True)
    )
    missing = ", ".join(names.of(one) for one in plan.without_walks)
    return ProveRound(
        heading=sentence(told.heading),
        begins=f"Begin at {told.begins_at}: {told.order}. Back there: {told.back}.",
        how=HOW_TO_WALK,
        stops=stops,
        missing=MISSING.format(names=missing) if missing else "",
    )


def _wait(walks: tuple[WalkTest, ...]) -> str:
    wait_s = max((walk.wait_s for walk in walks), default=0.0)
    return sentence(WAIT.format(wait=quantity(wait_s, "s", 1.0))) if wait_s else ""


def _walk(test: DueTest, walk: WalkTest, names: Names) -> ProveWalk:
    by = names.of(walk.subject) if walk.subject else ""
    pace = quantity(walk.pace_m_s, "m/s", 0.1)
    return ProveWalk(
        key=key_of_walk(test, walk),
        how=sentence(MANNERS[walk.manner].format(of=by)).removesuffix("."),
        pace=sentence(f"{walk.pace}, {pace}, {quantity(walk.length_m, 'm', 0.1)} long").removesuffix("."),
        expects=walk.expected,
        expected=sentence(expected_words(walk)),
        is_wanted=walk.is_wanted,
    )


def _expected(test: DueTest, answers: Sequence[Answer]) -> str:
    """What the model expects of a test that is no walk; what cannot be worked out says why."""
    answer = None if "view" in test.kind else expected_of(test, answers)
    if answer is None:
        return ""
    timed = [part for part in answer.parts if part.name.endswith(TIMED.get(test.kind, "\0"))]
    told = [f"{part.name} {value_words(part.estimate)}" for part in timed if part.estimate is not None]
    if told:
        return sentence(", ".join(told))
    value = answer.reason or "not known" if answer.estimate is None else with_range(answer.estimate)
    return sentence(f"{answer.measure}: {value}")
