"""Answers and findings as lines for a terminal, and answers as JSON."""

from __future__ import annotations

import json
import textwrap
from collections.abc import Sequence
from typing import Any

from wardwright.documents.content.drivers import chance_words, driver_lines
from wardwright.documents.content.finding_block import finding_groups
from wardwright.documents.content.headline import headline, horizon_of, measure_of
from wardwright.documents.content.mends import LOCKS_AND_LIGHTS, caution_of, cautions_of, mend_sentence
from wardwright.documents.content.names import Names, names_of
from wardwright.documents.content.not_counted import counted, not_counted
from wardwright.documents.content.quantities import sentence
from wardwright.documents.content.sun_calendar import sun_words
from wardwright.documents.content.wording import BEWARE, FINDING_GROUPS, NONE_OF_THEM, VERDICTS
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.rules.finding import Finding, Mend

WIDTH = 100
"""Columns of a terminal that lines are folded to. [-]"""


def answers_text(
    answers: tuple[Answer, ...],
    *,
    site: Site | None = None,
    catalogue: Catalogue | None = None,
    width: int = WIDTH,
) -> str:
    """Write answers as lines, in the order given.

    Parameters
    ----------
    answers : tuple of Answer
        Worst first.
    site, catalogue : Site, Catalogue, optional
        For the names of the things that mends are about; ids stand where they are not given.
    width : int, default 100
        Columns that lines are folded to. [-]

    Returns
    -------
    str
        One line an answer with aligned columns, what moves it and what would mend it under it; last, and
        together, the openings that are not counted as ways in. Plain letters.
    """
    if not answers:
        return "There is nothing to answer: no way in and no movement detector.\n"
    names = names_of(site, catalogue) if site is not None else Names()
    wide = min(32, max(len(answer.subject) for answer in answers))
    lines: list[str] = []
    horizon_s = horizon_of(catalogue)
    for answer in counted(answers):
        lines += _answer_lines(
            answer, headline(answer, horizon_s=horizon_s, is_plain=True), names=names, wide=wide, width=width
        )
    rest = not_counted(answers)
    if rest is not None:
        lines.append(f"NOT COUNTED  {rest.heading}")
        lines += [line for text in rest.groups for line in _folded(text, width)]
    lines += _cautions(site, catalogue, [mend for one in answers for mend in one.mends], width=width)
    return plain("\n".join(lines) + "\n")


def _answer_lines(
    answer: Answer, shown: tuple[str, str], *, wide: int, names: Names, width: int
) -> list[str]:
    one = answer.estimate
    value, span = shown
    word = VERDICTS[answer.verdict][0].upper()
    head = f"{word:<9}  Q{answer.question:<2}  {answer.subject:<{wide}}  {value or '-':>9}"
    head += f"  ({span})" if span else ""
    chance = chance_words(answer.chance) if one else ""
    told = [measure_of(answer, value) + (f"; {chance}" if chance else "")]
    if answer.reason:
        told.append(answer.reason)
    if one and driver_lines(one):
        drivers = [f"{d.name} ({d.swing}, {d.basis})" for d in driver_lines(one, is_plain=True)]
        told.append("moved most by: " + "; ".join(drivers))
    told += sun_words(answer, names)
    mends = sorted(answer.mends, key=lambda mend: mend.action not in LOCKS_AND_LIGHTS)
    told += ["mend: " + mend_sentence(mend, names, is_plain=True) for mend in mends]
    return [head, *(line for text in told for line in _folded(text, width))]


def findings_text(
    findings: tuple[Finding, ...],
    *,
    site: Site | None = None,
    catalogue: Catalogue | None = None,
    width: int = WIDTH,
) -> str:
    """Write findings as lines, gravest first, with a count at the end.

    Parameters
    ----------
    findings : tuple of Finding
        In any order.
    site, catalogue : Site, Catalogue, optional
        For names.
    width : int, default 100
        Columns that lines are folded to. [-]

    Returns
    -------
    str
        What was not run is named as such, with its reason.
    """
    names = names_of(site, catalogue) if site is not None else Names()
    groups = finding_groups(findings, names=names, is_plain=True)
    lines: list[str] = []
    for group in groups:
        for block in group.findings:
            lines.append(f"{group.severity.upper():<23}  {block.code}  {block.rule}")
            lines += _folded(block.message, width)
            lines += _folded(block.held_against, width) if block.held_against else []
            lines += _folded(("wanted: " if group.severity == "not run" else "cure: ") + block.cure, width)
            lines += [line for mend in block.mends for line in _folded("mend: " + mend, width)]
        if group.absent:
            lines += [f"{group.severity.upper():<23}  {NONE_OF_THEM}", *_folded(group.absent, width)]
    told = [caution_of(one) for one in findings if one.lacks is None]
    lines += _cautions(
        site, catalogue, [mend for one in findings for mend in one.mends], width=width, more=told
    )
    count_of = {"must mend": 0, "not run": 0} | {group.severity: group.count for group in groups}
    counts = [f"{count_of[key]} {key}" for key in FINDING_GROUPS if key in count_of]
    lines.append("Findings: " + ", ".join(counts) + ". What was not run has not passed.")
    return plain("\n".join(lines) + "\n")


def _cautions(
    site: Site | None, catalogue: Catalogue | None, mends: list[Mend], *, width: int, more: Sequence[str] = ()
) -> list[str]:
    """What to beware of in all that was said, once."""
    if site is None or catalogue is None:
        return []
    told = dict.fromkeys((*cautions_of(site, catalogue, mends), *filter(None, more)))
    return textwrap.wrap(f"{BEWARE}: {' '.join(told)}", width, subsequent_indent="  ") if told else []


def _folded(text: str, width: int) -> list[str]:
    return hanging(sentence(text), width, indent=" " * 11)


def hanging(text: str, width: int, *, indent: str = "") -> list[str]:
    """A paragraph as lines, all but its first two columns further in."""
    return textwrap.wrap(text, width, initial_indent=indent, subsequent_indent=indent + "  ")


def continued(text: str, width: int) -> list[str]:
    """A line as several where it is too long, the rest two columns further in; an empty one stays."""
    indent = " " * (len(text) - len(text.lstrip()) + 2)
    return textwrap.wrap(text, width, subsequent_indent=indent, break_long_words=False) or [""]


def plain(text: str) -> str:
    """Letters that any terminal has."""
    for fine, plain in (
        ("\u2019", "'"),
        ("\u201c", '"'),
        ("\u201d", '"'),
        ("\u2212", "-"),
        ("\u2026", "..."),
    ):
        text = text.replace(fine, plain)
    return text


def answers_json(answers: tuple[Answer, ...]) -> str:
    """Write answers as JSON, in the order given.

    Parameters
    ----------
    answers : tuple of Answer
        Worst first.

    Returns
    -------
    str
        ``{"answers": [...]}``; numbers are not rounded, and `value`, `low`, `high`, `unit` and `basis` are null
        where there is a `reason` instead.
    """
    return json.dumps({"answers": [_answer_data(answer) for answer in answers]}, indent=2) + "\n"


def _answer_data(answer: Answer) -> dict[str, Any]:
    return {
        "question": answer.question,
        "subject": answer.subject,
        **estimate_data(answer.estimate),
        "reason": answer.reason,
        "subject_id": answer.subject_id,
        "measure": answer.measure,
        "verdict": answer.verdict,
        "chance": answer.chance,
        "parts": [
            {"name": part.name, **estimate_data(part.estimate), "reason": part.reason}
            for part in answer.parts
        ],
        "notes": list(answer.notes),
        "mends": [
            {
                "action": mend.action,
                "subject": mend.subject,
                "values": dict(mend.values),
                "gain": estimate_data(mend.gain) if mend.gain is not None else None,
            }
            for mend in answer.mends
        ],
    }


def estimate_data(estimate: Estimate | None) -> dict[str, Any]:
    """An estimate as it stands in JSON, every key also where there is none; numbers are not rounded."""
    if estimate is None:
        return {"value": None, "low": None, "high": None, "unit": None, "drivers": [], "basis": None}
    return {
        "value": estimate.value,
        "low": estimate.low,
        "high": estimate.high,
        "unit": estimate.unit,
        "drivers": [{"name": d.name, "swing": d.swing, "basis": d.basis} for d in estimate.drivers],
        "basis": estimate.basis,
    }
