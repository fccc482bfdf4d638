"""The return visit to be expected: how likely one is, because of which risks of the design."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.rules.contacts import CONTACT_RULES
from wardwright.rules.finding import Finding
from wardwright.rules.fixing import FIXING_RULES
from wardwright.rules.links import LINK_RULES
from wardwright.rules.movement import MOVEMENT_RULES
from wardwright.rules.registry import findings_of
from wardwright.rules.sunlight import SUNLIGHT_RULES
from wardwright.trials.draws import Cases, Input

BEGINS = "return-visit-"
"""How the figures begin that say how likely a risk is to bring one about: the rule's code follows."""
SETTLING, LENGTH = "return-visit-settling", "return-visit"
LOOKED_AT = {
    rule.code: rule for rule in (*CONTACT_RULES, *FIXING_RULES, *LINK_RULES, *MOVEMENT_RULES, *SUNLIGHT_RULES)
}


class Risk(NamedTuple):
    """One thing that may bring somebody back."""

    subject: str
    """Id of the thing that the finding is about."""
    code: str
    """The rule's."""
    figure: str
    """The row that says how likely it is."""
    message: str


def risks_of(site: Site, catalogue: Catalogue) -> tuple[Risk, ...]:
    """What was found about the design that brings fitters back, as the catalogue's rows name it.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        Its figures name the rules that count.

    Returns
    -------
    tuple of Risk
        In the order of codes, then of subjects; a rule that could not be run is no risk that is known.
    """
    figures = {row.id for row in catalogue.figures}
    return tuple(
        Risk(one.subject, one.code, BEGINS + one.code.lower(), one.message)
        for code, rule in sorted(LOOKED_AT.items())
        if BEGINS + code.lower() in figures
        for one in findings_of(rule, site, catalogue)
        if is_a_risk(one)
    )


def is_a_risk(finding: Finding) -> bool:
    """Whether a finding is a fault of the design; one that is accepted is one still."""
    return finding.severity != "not run"


def risk_inputs(catalogue: Catalogue, risks: Sequence[Risk]) -> tuple[Input, ...]:
    """What the draws take to say how likely a return visit is, and how long it takes."""
    return _inputs(catalogue, frozenset(risk.figure for risk in risks))


@lru_cache(maxsize=256)
def _inputs(catalogue: Catalogue, figures: frozenset[str]) -> tuple[Input, ...]:
    return tuple(Input.of(catalogue.figure(name)) for name in sorted({SETTLING, LENGTH, *figures}))


def chance_of_return(risks: Sequence[Risk], cases: Cases) -> FloatArray:
    """How likely at least one return visit is in the first year: each kind of risk once, each by itself.

    Ten weak links are no ten times the risk of one: what one of them shows on the day is mended at all.

    Parameters
    ----------
    risks : sequence of Risk
        What was found.
    cases : Cases
        Rows that hold their figures.

    Returns
    -------
    ndarray, shape (rows,)
        One visit mends all that is found then. [-]
    """
    none = 1.0 - np.clip(cases.rows[SETTLING], 0.0, 1.0)
    for figure in sorted({risk.figure for risk in risks}):
        none = none * (1.0 - np.clip(cases.rows[figure], 0.0, 1.0))
    return np.asarray(1.0 - none, dtype=np.float64)
