"""Findings as a paper shows them: by severity, with what was not run among them."""

from __future__ import annotations

from dataclasses import dataclass

from wardwright.documents.content.mends import SMALL_M, mend_sentence
from wardwright.documents.content.names import Names
from wardwright.documents.content.quantities import quantity, sentence, step_of
from wardwright.documents.content.wording import SEVERITIES
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
    """The findings of one severity."""

    severity: Severity
    heading: str
    meaning: str
    findings: tuple[FindingBlock, ...]


def finding_groups(findings: tuple[Finding, ...], *, names: Names) -> tuple[FindingGroup, ...]:
    """Group findings, gravest first; a severity without findings has no group.

    Parameters
    ----------
    findings : tuple of Finding
        In any order; within a group it is kept.
    names : Names
        What people call things.

    Returns
    -------
    tuple of FindingGroup
        What was not run stands as a group of its own, last.
    """
    groups = []
    for severity, (heading, meaning) in SEVERITIES.items():
        chosen = tuple(finding_block(one, names=names) for one in findings if one.severity == severity)
        if chosen:
            groups.append(FindingGroup(severity, heading, meaning, chosen))
    return tuple(groups)


def finding_block(finding: Finding, *, names: Names, is_plain: bool = False) -> FindingBlock:
    """Put one finding into words."""
    held = ""
    if finding.estimate is not None and finding.limit is not None:
        held = _held(finding.estimate, finding.limit, is_plain=is_plain)
    return FindingBlock(
        code=finding.code,
        rule=finding.rule,
        subject=names.of(finding.subject),
        message=sentence(finding.message),
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
