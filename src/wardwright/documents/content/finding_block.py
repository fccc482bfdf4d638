"""Findings as a paper shows them: by severity, with what was not run among them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from wardwright.documents.content.mends import SMALL_M, mend_sentence
from wardwright.documents.content.names import Names
from wardwright.documents.content.quantities import quantity, sentence, step_of
from wardwright.documents.content.wording import FINDING_GROUPS
from wardwright.model.device import kind_words
from wardwright.model.estimate import Estimate
from wardwright.rules.finding import Finding, Severity


@dataclass(frozen=True, slots=True)
class FindingBlock:
    """One finding, ready to be set."""

    code: str
    rule: str
    subject: str
    message: str
    held_against: str
    cure: str
    mends: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FindingGroup:
    """The findings of one severity, or those that the user lives with."""

    severity: Severity | Literal["accepted"]
    heading: str
    meaning: str
    count: int
    """How many findings it has, those told in one line included."""
    findings: tuple[FindingBlock, ...]
    absent: str = ""
    """Kinds of device that the site has none of, with the rules that were not run for that; empty where none is."""


def finding_groups(
    findings: tuple[Finding, ...], *, names: Names, is_plain: bool = False
) -> tuple[FindingGroup, ...]:
    """Group findings, gravest first; a severity without findings has no group.

    Parameters
    ----------
    findings : tuple of Finding
        In any order; within a group it is kept.
    names : Names
        What people call things.
    is_plain : bool, default False
        Plain letters only, for a terminal.

    Returns
    -------
    tuple of FindingGroup
        What is accepted stands after the severities, and what was not run last: one reason once, with the codes of
        all its rules, and the kinds of device that the site has none of together in one line.
    """
    found = []
    for key, (heading, meaning) in FINDING_GROUPS.items():
        chosen = [one for one in findings if _group_of(one) == key]
        wanting = [one for one in chosen if one.lacks is not None] if key == "not run" else []
        told = _one_for_a_reason([one for one in chosen if one not in wanting])
        blocks = tuple(finding_block(one, names=names, is_plain=is_plain) for one in told)
        if chosen:
            found.append(FindingGroup(key, heading, meaning, len(chosen), blocks, _absent(wanting)))
    return tuple(found)


def _group_of(finding: Finding) -> Severity | Literal["accepted"]:
    return "accepted" if finding.accepted else finding.severity


def _one_for_a_reason(findings: list[Finding]) -> list[Finding]:
    """What was not run for one and the same reason, as one, with all its codes."""
    by_reason: dict[object, list[Finding]] = {}
    for i, one in enumerate(findings):
        is_same = one.severity == "not run" and not one.accepted
        key = (one.subject, one.message, one.cure, one.mends) if is_same else i
        by_reason.setdefault(key, []).append(one)
    return [_joined(same) for same in by_reason.values()]


def _joined(same: list[Finding]) -> Finding:
    codes = sorted({one.code for one in same})
    if len(codes) == 1:
        return same[0]
    return same[0].model_copy(update={"code": ", ".join(codes), "rule": f"{len(codes)} rules"})


def _absent(findings: list[Finding]) -> str:
    """Kinds of device that the site has none of, each with the rules that were not run for want of it."""
    codes: dict[str, set[str]] = {}
    for one in findings:
        if one.lacks is not None:
            codes.setdefault(kind_words(one.lacks), set()).add(one.code)
    kinds = [f"{kind}s ({', '.join(sorted(codes[kind]))})" for kind in sorted(codes)]
    return sentence("; ".join(kinds))


def finding_block(finding: Finding, *, names: Names, is_plain: bool = False) -> FindingBlock:
    """Put one finding into words."""
    held = ""
    if finding.estimate is not None and finding.limit is not None:
        held = _held(finding.estimate, finding.limit, is_plain=is_plain)
    message = sentence(finding.message)
    if finding.accepted:
        message = f"{sentence(f'accepted: {finding.rule}, because {finding.accepted}')} {message}"
    return FindingBlock(
        code=finding.code,
        rule=finding.rule,
        subject=names.of(finding.subject),
        message=message,
        held_against=held,
        cure=sentence(finding.cure),
        mends=tuple(mend_sentence(mend, names, is_plain=is_plain) for mend in finding.mends),
    )


def _held(estimate: Estimate, limit: float, *, is_plain: bool) -> str:
    """A value and what it is held against; lengths of a few millimetres in millimetres."""
    value, unit, step = estimate.value, estimate.unit, step_of(estimate)
    if unit == "m" and abs(limit) < SMALL_M:
        value, limit, unit, step = value * 1000.0, limit * 1000.0, "mm", 1.0
    told, against = (quantity(one, unit, step, is_plain=is_plain) for one in (value, limit))
    return f"{told}, held against {against}"
