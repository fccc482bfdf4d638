"""The return visit to be expected: how likely one is, because of which risks of the design."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache
from types import MappingProxyType
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, DeviceKind
from wardwright.model.household import Pet
from wardwright.model.site import Site
from wardwright.rules.contacts import CONTACT_RULES
from wardwright.rules.contacts.contact_gap_over_its_sheet import contact_gap_over_its_sheet
from wardwright.rules.fixing import FIXING_RULES
from wardwright.rules.links import LINK_RULES
from wardwright.rules.movement import MOVEMENT_RULES
from wardwright.rules.registry import Rule, faults_of
from wardwright.rules.sunlight import SUNLIGHT_RULES
from wardwright.trials.draws import Cases, Input

BEGINS = "return-visit-"
"""How the figures begin that say how likely a risk is to bring one about: the rule's code follows."""
SETTLING, LENGTH = "return-visit-settling", "return-visit"
LOOKED_AT = {
    rule.code: rule for rule in (*CONTACT_RULES, *FIXING_RULES, *LINK_RULES, *MOVEMENT_RULES, *SUNLIGHT_RULES)
}

OF_ANY_DEVICE: tuple[Rule, ...] = FIXING_RULES
"""Rules that look at one device after another, each with the house and its animals alone."""
OF_ONE_DEVICE: Mapping[DeviceKind, tuple[Rule, ...]] = MappingProxyType(
    {
        "movement-detector": (*MOVEMENT_RULES, *SUNLIGHT_RULES),
        "opening-contact": (contact_gap_over_its_sheet,),
    }
)
"""Likewise, of one kind each."""


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
    found = [
        risk for one in site.devices for risk in _risks_of_one(site.bare, catalogue, one, pets=site.pets)
    ]
    of_one = {rule.code for rules in (OF_ANY_DEVICE, *OF_ONE_DEVICE.values()) for rule in rules}
    others = [rule for code, rule in LOOKED_AT.items() if code not in of_one]
    found += _risks_by(others, site, catalogue)
    return tuple(sorted(found, key=lambda one: (one.code, one.subject)))


@lru_cache(maxsize=512)
def _risks_of_one(
    house: Site, catalogue: Catalogue, device: Device, *, pets: tuple[Pet, ...]
) -> tuple[Risk, ...]:
    """What is a risk of one device, remembered while others move."""
    rules = (*OF_ANY_DEVICE, *OF_ONE_DEVICE.get(catalogue.sheet(device.sheet).kind, ()))
    alone = house.model_copy(update={"devices": (device,), "pets": pets})
    return tuple(_risks_by(rules, alone, catalogue))


def _risks_by(rules: Iterable[Rule], site: Site, catalogue: Catalogue) -> list[Risk]:
    figures = _figures_of_rules(catalogue)
    return [
        Risk(one.subject, one.code, figures[one.code], one.message)
        for rule in rules
        if rule.code in figures
        for one in faults_of(rule, site, catalogue)
    ]


@lru_cache(maxsize=16)
def _figures_of_rules(catalogue: Catalogue) -> Mapping[str, str]:
    """Code of a rule that counts -> the row that says how likely its faults are to bring somebody back."""
    known = {row.id for row in catalogue.figures}
    return {code: row for code in LOOKED_AT if (row := BEGINS + code.lower()) in known}


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
