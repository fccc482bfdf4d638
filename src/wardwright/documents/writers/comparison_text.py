"""Two states of a house held against each other, as lines for a terminal and as JSON."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

from wardwright.documents.content.comparison import ComparedLine, Comparison, state_words
from wardwright.documents.content.signed import ProgramTold
from wardwright.documents.writers.text import WIDTH, continued, estimate_data, plain
from wardwright.questions.answer import Answer
from wardwright.questions.changes_since import Changes


def comparison_text(
    told: Comparison, *, names: tuple[str, str], program: ProgramTold | None = None, width: int = WIDTH
) -> str:
    """Write what differs as lines.

    Parameters
    ----------
    told : Comparison
        In words.
    names : tuple of str
        What the earlier and the later state are called.
    program : ProgramTold, optional
        What the program gives otherwise than when the earlier state was signed; None: it was not signed.
    width : int, default 100
        Columns that lines are folded to. [-]

    Returns
    -------
    str
        First what changed and which answers fail now, last the tests to repeat in walking order. Plain letters.
    """
    parts = (
        (f"{names[0]} -> {names[1]}",),
        _house(told),
        _program(program),
        *_answers(told),
        _rules(told),
        _tests(told),
    )
    lines = [line for part in parts for text in part for line in continued(text, width)]
    return plain("\n".join(lines).strip() + "\n")


def _house(told: Comparison) -> Iterator[str]:
    yield ""
    if not told.changes:
        yield "THE HOUSE is as it was"
        return
    yield f"THE HOUSE: {len(told.changes)} changed"
    for one in told.changes:
        what = "; ".join(one.what) or one.course
        yield f"  {one.thing}{f' ({one.of})' if one.of else ''}: {what}"


def _program(program: ProgramTold | None) -> Iterator[str]:
    if program is None:
        return
    yield ""
    if not program.what and not program.answers:
        yield "THE PROGRAM AND ITS ROWS OF DATA are as they were signed"
        return
    yield f"THE PROGRAM AND ITS ROWS OF DATA: {len(program.what) or 'no'} difference told"
    yield from (f"  {one}" for one in program.what)
    yield f"  Of the house as signed {len(program.answers)} answers and findings are others for that alone:"
    for one in program.answers:
        yield "    {title}: {was} -> {today}".format_map(one.model_dump())
    yield "  No test needs to be repeated for these: nothing in the house is another."


def _answers(told: Comparison) -> Iterator[Iterator[str]]:
    failing = [one for one in told.answers if one.fails == "now"]
    mended = [one for one in told.answers if one.fails == "no more"]
    rest = [one for one in told.answers if not one.fails]
    within = [one for one in rest if not one.is_beyond]
    yield _listed("ANSWERS THAT FAIL NOW", failing)
    yield _listed("ANSWERS THAT FAIL NO MORE", mended)
    yield _listed("OTHER ANSWERS, changed beyond the range that they had", [o for o in rest if o.is_beyond])
    if within:
        yield iter(("", f"WITHIN THE RANGE THAT THEY HAD: {len(within)} more moved"))
    yield iter((f"AS THEY WERE: {told.same} answers",))


def _listed(heading: str, lines: list[ComparedLine]) -> Iterator[str]:
    yield ""
    yield f"{heading}: {len(lines) or 'none'}"
    for one in lines:
        number = one.key.partition("/")[0]
        by = f" ({one.by})" if one.by else ""
        yield (
            f"  {one.course_word}: Q{number} {one.question_name}, {one.subject}: "
            f"{state_words(one.before)} -> {state_words(one.after)}{by}"
        )


def _rules(told: Comparison) -> Iterator[str]:
    for course, heading in (
        ("came", "RULES THAT FAIL NOW"),
        ("went", "RULES THAT FAIL NO MORE"),
        ("not checked now", "RULES THAT CANNOT BE RUN NOW, and failed before"),
    ):
        lines = [one for one in told.findings if one.course == course]
        if lines or course != "not checked now":
            yield ""
            yield f"{heading}: {len(lines) or 'none'}"
        for one in lines:
            yield f"  {one.code} {one.subject}, {one.severity}: {one.message}"


def _tests(told: Comparison) -> Iterator[str]:
    tests = told.tests
    yield ""
    yield f"TESTS TO REPEAT: {tests.heading[0].lower()}{tests.heading[1:]}"
    if not tests.stops:
        return
    yield f"  In {tests.order}; begin and end at: {tests.begins_at}"
    for stop in tests.stops:
        yield f"  {stop.number}. {stop.where or 'no place known'}, walk {stop.walk}"
        for one in stop.tests:
            yield f"      {one.what} [{one.why}]"
    yield f"  back: {tests.back}"


def comparison_json(found: Changes, told: Comparison, *, program: ProgramTold | None = None) -> str:
    """Write what differs as JSON; numbers are not rounded.

    Parameters
    ----------
    found : Changes
        What differs, as numbers.
    told : Comparison
        What differs in the house, in words.
    program : ProgramTold, optional
        What the program gives otherwise than when the earlier state was signed; None: it was not signed.

    Returns
    -------
    str
        ``{"house": [...], "program": {...} or null, "answers": [...], "findings": [...], "tests": {...}}``.
    """
    data: dict[str, Any] = {
        "house": [one.model_dump(mode="json") for one in told.changes],
        "program": None if program is None else program.model_dump(mode="json"),
        "answers": [
            {
                "question": one.latest.question,
                "subject": one.latest.subject,
                "subject_id": one.latest.subject_id,
                "measure": one.latest.measure,
                "course": one.course,
                "fails": "now" if one.fails_now else "no more" if one.fails_no_more else None,
                "is_beyond_its_range": one.is_beyond,
                "by": one.by,
                "before": _answer(one.before),
                "after": _answer(one.after),
            }
            for one in found.answers
        ],
        "findings": [
            {"course": one.course, "code": one.finding.code, "subject": one.finding.subject,
             "severity": one.finding.severity, "message": one.finding.message}
            for one in found.findings
        ],
        "tests": {
            **found.tests.model_dump(mode="json", exclude={"sketches", "minutes", "walking"}),
            "minutes": estimate_data(found.tests.minutes),
            "walking": estimate_data(found.tests.walking),
        },
    }  # fmt: skip
    return json.dumps(data, indent=2) + "\n"


def _answer(one: Answer | None) -> dict[str, Any] | None:
    if one is None:
        return None
    return {"verdict": one.verdict, **estimate_data(one.estimate), "reason": one.reason}
