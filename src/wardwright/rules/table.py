"""The table of rules, and the one way to run them all."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches

from wardwright.errors import InputError
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.rules.acceptance import with_reasons
from wardwright.rules.cameras import CAMERA_RULES
from wardwright.rules.contacts import CONTACT_RULES
from wardwright.rules.control import CONTROL_RULES
from wardwright.rules.finding import Finding
from wardwright.rules.fire import FIRE_RULES
from wardwright.rules.fixing import FIXING_RULES
from wardwright.rules.glass import GLASS_RULES
from wardwright.rules.keypads import KEYPAD_RULES
from wardwright.rules.links import LINK_RULES
from wardwright.rules.movement import MOVEMENT_RULES
from wardwright.rules.names import NAME_RULES
from wardwright.rules.power import POWER_RULES
from wardwright.rules.programme import PROGRAMME_RULES
from wardwright.rules.registry import Rule, findings_of, tabled
from wardwright.rules.service import SERVICE_RULES
from wardwright.rules.sounders import SOUNDER_RULES
from wardwright.rules.sunlight import SUNLIGHT_RULES
from wardwright.rules.water import WATER_RULES

RULES: tuple[Rule, ...] = tabled(
    *CAMERA_RULES,
    *CONTACT_RULES,
    *CONTROL_RULES,
    *FIRE_RULES,
    *FIXING_RULES,
    *GLASS_RULES,
    *KEYPAD_RULES,
    *LINK_RULES,
    *MOVEMENT_RULES,
    *NAME_RULES,
    *PROGRAMME_RULES,
    *POWER_RULES,
    *SOUNDER_RULES,
    *SERVICE_RULES,
    *SUNLIGHT_RULES,
    *WATER_RULES,
)
"""All rules, in code order. `scripts/new-rule` says what to add."""


def rule(word: str, rules: tuple[Rule, ...] = RULES) -> Rule:
    """Look up a rule.

    Parameters
    ----------
    word : str
        Its code or its name, in capitals or not.
    rules : tuple of Rule
        Where to look.

    Returns
    -------
    Rule
        The rule.

    Raises
    ------
    InputError
        If there is none; the message names the nearest.

    Examples
    --------
    >>> rule("con101").name
    'contact-gap-over-its-sheet'
    """
    known = {key.lower(): one for one in rules for key in (one.code, one.name)}
    wanted = word.strip().lower()
    if wanted in known:
        return known[wanted]
    near = get_close_matches(wanted, known, n=1)
    hint = (
        f"Did you mean {known[near[0]].code}, {known[near[0]].name}"
        if near
        else "'wardwright rule' lists them"
    )
    raise InputError(f"there is no rule '{word}'", where="rules", cure=hint)


def check(site: Site, catalogue: Catalogue) -> tuple[Finding, ...]:
    """Run every rule.

    Parameters
    ----------
    site : Site
        The site; left as it is.
    catalogue : Catalogue
        The devices' sheets and the figures.

    Returns
    -------
    tuple of Finding
        In the order of codes, then of subjects; a rule that cannot run is there with severity `not run`, and what
        the site's needs accept is there with the reason.
    """
    return _checked(RULES, site, catalogue)


def check_in_hand(site: Site, catalogue: Catalogue, *, has_house_moved: bool) -> tuple[Finding, ...]:
    """Run the rules that follow a hand that drags; all else as in `check`.

    Parameters
    ----------
    site : Site
        The site, with the thing where the hand has it.
    catalogue : Catalogue
        Sheets and figures.
    has_house_moved : bool
        Whether a wall is in the hand, or anything else of the house itself.

    Returns
    -------
    tuple of Finding
        Without those of `that_wait`.
    """
    waiting = that_wait(has_house_moved=has_house_moved)
    return _checked([one for one in RULES if one.code not in waiting], site, catalogue)


def that_wait(*, has_house_moved: bool) -> frozenset[str]:
    """Codes of the rules that wait until the hand rests."""
    waiting = {"nothing", "devices"} if has_house_moved else {"nothing"}
    return frozenset(one.code for one in RULES if one.follows in waiting)


def _checked(rules: Iterable[Rule], site: Site, catalogue: Catalogue) -> tuple[Finding, ...]:
    found = tuple(finding for one in rules for finding in findings_of(one, site, catalogue))
    return with_reasons(found, site.needs.accepted)
