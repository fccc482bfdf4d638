"""Findings as a paper shows them: by severity, with what was not run among them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from wardwright.documents.content.mends import mend_sentence
from wardwright.documents.content.quantities import quantity, sentence, step_of, value_words
from wardwright.documents.content.wording import SEVERITIES
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


def finding_groups(findings: tuple[Finding, ...], *, names: Mapping[str, str]) -> tuple[FindingGroup, ...]:
    """Group findings, gravest first; a severity without findings has no group.

    Parameters
    ----------
    findings : tuple of Finding
        In any order; within a group it is kept.
    names : mapping of str
        Names by id.

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


def finding_block(finding: Finding, *, names: Mapping[str, str], is_plain: bool = False) -> FindingBlock:
    """Put one finding into words."""
    held = ""
    if finding.estimate is not None and finding.limit is not None:
        limit = quantity(
            finding.limit, finding.estimate.unit, min(0.1, step_of(finding.estimate)), is_plain=is_plain
        )
        held = f"{value_words(finding.estimate, is_plain=is_plain)}, held against {limit}"
    return FindingBlock(
        code=finding.code,
        rule=finding.rule,
        subject=names.get(finding.subject, finding.subject),
        message=sentence(finding.message),
        held_against=held,
        cure=sentence(finding.cure),
        mends=tuple(mend_sentence(mend, names, is_plain=is_plain) for mend in finding.mends),
    )
