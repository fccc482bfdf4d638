"""What a rule is, and the table that holds them: explicit, in code order, each once."""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable, Iterator
from contextlib import suppress
from dataclasses import dataclass
from functools import partial
from typing import Literal

from wardwright.errors import NoneOfAKind, NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.record import BASES, Basis
from wardwright.model.rows import Mark
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.finding import Finding, Mend, Severity

Check = Callable[[Site, Catalogue], Iterator[Finding]]
"""Looks at a site with a catalogue and yields findings; raises NotComputable when it cannot look at all."""

Stage = Literal["trial use", "settled", "retired"]
"""`trial use`: its limits may still move. `settled`: they move only with a changelog line. `retired`: it is kept for
its code and finds nothing."""

Follows = Literal["walls and devices", "devices", "nothing"]
"""What is asked anew many times a second while it is dragged; the rest waits until the hand rests."""

CODE_FORM = re.compile(r"[A-Z]{3}[1-9][0-9]{2}")
"""Three letters for the subject, three digits."""


@dataclass(frozen=True)
class Rule:
    """One rule: what it is called, how it is known, and its check."""

    code: str
    """For ever: never given to another rule."""
    name: str
    """The fault."""
    since: str
    """The version of the program that first had it."""
    stage: Stage
    mark: Mark
    """How its limit is known."""
    severity: Severity
    """What its findings are, unless a finding says otherwise."""
    sources: tuple[str, ...]
    """Keys of sources.toml."""
    check: Check
    follows: Follows = "walls and devices"
    unmended: Check | None = None
    """The same check, but for cures, mends and what is drawn; None: these take no time worth saving."""

    @property
    def summary(self) -> str:
        """The first line of its text."""
        return (inspect.getdoc(self.check) or "").partition("\n")[0]

    def finding(  # noqa: PLR0913 - a finding has that many parts
        self,
        subject: str,
        message: str,
        *,
        cure: str,
        severity: Severity | None = None,
        estimate: Estimate | None = None,
        limit: float | None = None,
        mends: tuple[Mend, ...] = (),
        sketches: tuple[Sketch, ...] = (),
        related: tuple[str, ...] = (),
    ) -> Finding:
        """Make a finding of this rule."""
        return Finding(
            code=self.code,
            rule=self.name,
            severity=severity or self.severity,
            subject=subject,
            message=message,
            cure=cure,
            estimate=estimate,
            limit=limit,
            mends=mends,
            sketches=sketches,
            related=related,
        )

    def not_run(self, subject: str, reason: str, *, cure: str = "", mends: tuple[Mend, ...] = ()) -> Finding:
        """Say that this rule could not be run on one thing, or at all, and why: never counted as passed."""
        return self.finding(
            subject, reason, cure=cure or "Add what is missing", severity="not run", mends=mends
        )


def rule(  # noqa: PLR0913 - a rule has that many parts
    *,
    code: str,
    name: str,
    since: str,
    stage: Stage,
    mark: Mark,
    severity: Severity,
    sources: tuple[str, ...],
    follows: Follows = "walls and devices",
    mends_apart: bool = False,
) -> Callable[[Check], Rule]:
    """Make a rule of a check function.

    It is part of the program only once `wardwright.rules.table` names it.

    Parameters
    ----------
    code, name, since, stage, mark, severity, sources, follows
        As the fields of `Rule`.
    mends_apart : bool, default False
        Whether the check has an argument `is_mended`, by which it leaves out the cure, the mends and what they draw.

    Returns
    -------
    callable
        Turns the check into a `Rule`.
    """

    def made(check: Check) -> Rule:
        with_argument: Callable[..., Iterator[Finding]] = check
        unmended = partial(with_argument, is_mended=False) if mends_apart else None
        return Rule(code, name, since, stage, mark, severity, sources, check, follows, unmended)

    return made


def tabled(*rules: Rule) -> tuple[Rule, ...]:
    """Check that rules make a table: each code and name once, in code order, each with its text.

    Parameters
    ----------
    *rules : Rule
        The rules, in the order in which they are to be run.

    Returns
    -------
    tuple of Rule
        The same.

    Raises
    ------
    ValueError
        If a code or name comes twice, a code has not the form, they are out of order, or a text is missing.
    """
    seen: dict[str, Rule] = {}
    last = ""
    for one in rules:
        if not CODE_FORM.fullmatch(one.code):
            raise ValueError(f"{one.name}: code '{one.code}' is not three letters and three digits")
        for key in (one.code, one.name):
            if key in seen:
                raise ValueError(f"'{key}' is registered twice: by {seen[key].name} and by {one.name}")
            seen[key] = one
        if one.code < last:
            raise ValueError(f"{one.code} stands after {last}: the table is in code order")
        if not inspect.getdoc(one.check):
            raise ValueError(f"{one.code} has no text")
        last = one.code
    return rules


def findings_of(rule_: Rule, site: Site, catalogue: Catalogue) -> tuple[Finding, ...]:
    """Run one rule.

    Parameters
    ----------
    rule_ : Rule
        The rule.
    site : Site
        The site; left as it is.
    catalogue : Catalogue
        The sheets and figures.

    Returns
    -------
    tuple of Finding
        In the order of their subjects. Where the rule cannot run there is one of severity `not run`.
    """
    found: list[Finding] = []
    try:
        found.extend(rule_.check(site, catalogue))
    except NotComputable as reason:
        # What was found before it stopped is kept; that it stopped is said as well.
        said = rule_.not_run(site.name, str(reason), cure=reason.cure)
        lacks = reason.kind if isinstance(reason, NoneOfAKind) else None
        found.append(said.model_copy(update={"lacks": lacks}))
    return tuple(sorted(found, key=_by_subject))


def faults_of(rule_: Rule, site: Site, catalogue: Catalogue) -> tuple[Finding, ...]:
    """What a rule finds wrong, for who only asks whether anything is.

    Parameters
    ----------
    rule_ : Rule
        The rule.
    site : Site
        The site; left as it is.
    catalogue : Catalogue
        The sheets and figures.

    Returns
    -------
    tuple of Finding
        In the order of their subjects, without mends where these take long. What could not be run is no fault that
        is known, and is left out.
    """
    found: list[Finding] = []
    with suppress(NotComputable):
        found.extend((rule_.unmended or rule_.check)(site, catalogue))
    return tuple(sorted((one for one in found if one.severity != "not run"), key=_by_subject))


def _by_subject(one: Finding) -> tuple[str, str, str]:
    return (one.subject, one.severity, one.message)


def exactly(value: float, unit: str, basis: Basis) -> Estimate:
    """An estimate without a range: a number read off the plan as it is drawn."""
    return Estimate(value=value, low=value, high=value, unit=unit, basis=basis)


def weakest(*bases: Basis) -> Basis:
    """The worst known of several facts.

    Examples
    --------
    >>> weakest("told", "guessed", "measured")
    'guessed'
    """
    return max(bases, key=BASES.index)
