"""What the user wants of the alarm, and which findings they live with."""

from __future__ import annotations

import re

from wardwright.intake.notes.clauses import Grammar, read_clauses
from wardwright.intake.notes.draft import Draft
from wardwright.intake.notes.marks import changed
from wardwright.intake.notes.words import Line
from wardwright.model.needs import Accepted

RULE_CODE = re.compile(r"[A-Z]{3}[1-9][0-9]{2}")


def read_accept(draft: Draft, line: Line) -> None:
    """Read `accept CTL101 hall-control-unit because "the unit is bolted to stone"`.

    Parameters
    ----------
    draft : Draft
        The site so far; gains an accepted finding.
    line : Line
        The line.
    """
    line.take("accept")
    code = line.name("a rule's code, such as CTL101").upper()
    if not RULE_CODE.fullmatch(code):
        raise line.refuse(
            f"'{code}' is no rule's code", "Write three letters and three digits, such as CTL101"
        )
    subject = None
    if not line.maybe("because"):
        subject = line.name("the id of what it is about, or 'because'")
        if not line.maybe("because"):
            raise line.refuse("nothing says why it is accepted", "Write because and the reason in quotes")
    reason = line.name("the reason, in quotes")
    one = Accepted.model_validate({"rule": code, "subject": subject, "because": reason})
    accepted = (*draft.needs.accepted, one)
    draft.needs = changed(draft.needs, {"accepted": accepted}, read_clauses(line, Grammar()))


def read_grade(draft: Draft, line: Line) -> None:
    """Read `grade 2`, or `grade none` where no grade is aimed at.

    Parameters
    ----------
    draft : Draft
        The site so far; its needs get another grade.
    line : Line
        The line.
    """
    line.take("grade")
    grade = None if line.maybe("none") else line.number("the security grade, 1 to 4, or none", ())
    draft.needs = changed(draft.needs, {"grade": grade}, read_clauses(line, Grammar()))
