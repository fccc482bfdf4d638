"""Findings that the user has seen and lives with: marked with the reason, never taken away."""

from __future__ import annotations

from wardwright.model.needs import Accepted
from wardwright.model.site import Site
from wardwright.rules.finding import Finding


def with_reasons(findings: tuple[Finding, ...], accepted: tuple[Accepted, ...]) -> tuple[Finding, ...]:
    """Mark the findings that are accepted with the reason why.

    Parameters
    ----------
    findings : tuple of Finding
        In any order.
    accepted : tuple of Accepted
        What the site's needs say.

    Returns
    -------
    tuple of Finding
        All of them, in the same order.
    """
    told = ((finding, _reason(finding, accepted)) for finding in findings)
    return tuple(
        finding.model_copy(update={"accepted": reason}) if reason else finding for finding, reason in told
    )


def left_over(site: Site, findings: tuple[Finding, ...]) -> tuple[Accepted, ...]:
    """What is accepted though no rule finds it: gone since, or a slip of the pen.

    Parameters
    ----------
    site : Site
        Its needs say what is accepted.
    findings : tuple of Finding
        What the rules found.

    Returns
    -------
    tuple of Accepted
        In the order of the needs.
    """
    return tuple(one for one in site.needs.accepted if not any(_fits(one, finding) for finding in findings))


def _reason(finding: Finding, accepted: tuple[Accepted, ...]) -> str:
    """The reason that speaks of this very subject before one that speaks of all."""
    fitting = sorted((one for one in accepted if _fits(one, finding)), key=lambda one: one.subject is None)
    return fitting[0].because if fitting else ""


def _fits(accepted: Accepted, finding: Finding) -> bool:
    return accepted.rule == finding.code and accepted.subject in (None, finding.subject)
