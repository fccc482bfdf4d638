"""Signing, and holding what was signed against today: asks the house step by step, so that it can be stopped."""

from __future__ import annotations

from typing import NamedTuple

from wardwright import __version__
from wardwright.documents.content.changes_told import told_changes
from wardwright.documents.content.program_told import Stand, told_program
from wardwright.documents.content.round_told import told_round
from wardwright.documents.content.signed import different_answers
from wardwright.model.changes import differences
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.as_signed import by_key, compared, read_answers, read_findings
from wardwright.questions.changes_since import changes_since
from wardwright.questions.compared import State
from wardwright.questions.table import QUESTIONS, worst_first
from wardwright.rules.finding import Finding
from wardwright.server.desk import Desk
from wardwright.server.work import Work
from wardwright.server.work_messages import SignedLine, SigningWish, SinceSigned
from wardwright.store.jobs.signatures import Signed, digest_of, rows_signed, sign, signed_at, to_sign_of

PROGRAM = __version__
STEPS = len(QUESTIONS) + 1
"""Of asking one state of a house: each question, and the siting rules. [-]"""

UNEXPLAINED = (
    "neither the version nor the rows of data changed, yet the house as signed gives other answers now: "
    "please report it"
)


class Told(NamedTuple):
    """All that is said of one state of a house."""

    answers: tuple[Answer, ...]
    findings: tuple[Finding, ...]


def told_of(desk: Desk, site: Site, work: Work, *, of: str) -> Told:
    """Ask one state of a house, a question a step.

    Parameters
    ----------
    desk : Desk
        The job's.
    site : Site
        That state.
    work : Work
        Is told of each step; Stopped comes from it.
    of : str
        What the state is called, such as `today's house`.

    Returns
    -------
    Told
        Worst first.
    """
    found: list[Answer] = []
    for question in QUESTIONS:
        work.step(f"asking {of} question {question.number}")
        found += desk.answers_to(question.number, site)
    work.step(f"looking at {of} for faults of siting")
    return Told(worst_first(found), desk.findings_of(site))


def sign_now(desk: Desk, wish: SigningWish, work: Work) -> SignedLine:
    """Keep the answers and findings of a revision as signed; nothing is kept if it is stopped before."""
    site = desk.job.site(wish.revision)
    told = told_of(desk, site, work, of="the house")
    work.step("keeping them")
    number = sign(
        desk.job,
        to_sign_of(
            site,
            desk.catalogue,
            revision=wish.revision,
            program=PROGRAM,
            answers=told.answers,
            findings=told.findings,
        ),
        author=wish.author.strip(),
        what=wish.what.strip(),
    )
    return signed_line(desk, signed_at(desk.job, number))


def compare(desk: Desk, one: Signed, work: Work) -> SinceSigned:
    """Hold answers as they were signed against today's.

    The house as it was signed is asked anew: what comes out otherwise is the program's doing, the rest the house's.
    """
    then, now = desk.job.site(one.revision), desk.job.site()
    again = told_of(desk, then, work, of="the house as signed")
    today = told_of(desk, now, work, of="today's house")
    answers = compared(read_answers(one.answers), by_key(again.answers), by_key(today.answers))
    findings = compared(read_findings(one.findings), by_key(again.findings), by_key(today.findings))
    program_says = _program(desk, one)
    if not program_says and any(each.cause != "house" for each in (*answers, *findings)):
        program_says = (UNEXPLAINED,)
    keys = {*by_key(today.answers), *(each.key for each in answers)}
    rules = {*by_key(today.findings), *(each.key for each in findings)}
    return SinceSigned(
        number=one.number,
        same=len(keys) + len(rules) - len(answers) - len(findings),
        answers=different_answers(answers, desk.catalogue, then=then, now=now),
        findings=different_answers(findings, desk.catalogue, then=then, now=now),
        house=told_changes(then, now, desk.catalogue),
        program=program_says,
        # Held against the house as signed, asked anew: what the program alone gives otherwise asks for no test.
        tests=told_round(
            changes_since(State(then, *again), State(now, *today), desk.catalogue).tests, now, desk.catalogue
        ),
    )


def _program(desk: Desk, one: Signed) -> tuple[str, ...]:
    digest = digest_of(desk.catalogue)
    # Which rows are others is worked out only where any is.
    is_same = one.catalogue == digest
    rows = {} if is_same else rows_signed(desk.job, one.catalogue)
    today = {} if is_same else desk.catalogue.model_dump(mode="json")
    return told_program(Stand(one.program, one.catalogue, rows), Stand(PROGRAM, digest, today))


def signed_line(desk: Desk, one: Signed) -> SignedLine:
    """What was signed, as a line of a list."""
    return SignedLine(
        number=one.number,
        revision=one.revision,
        at=one.at,
        author=one.author,
        what=one.what,
        program=one.program,
        answers=len(one.answers),
        findings=len(one.findings),
        is_same_house=not differences(desk.job.site(one.revision), desk.job.site()),
        is_same_program=(one.program, one.catalogue) == (PROGRAM, digest_of(desk.catalogue)),
    )
