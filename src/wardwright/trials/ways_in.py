"""The ways into a house: which openings, in which manner, and how long each holds."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from wardwright.model.catalogue import Catalogue, Figure
from wardwright.model.opening import Manner, Opening
from wardwright.model.placement import is_way_in, sides_of_opening
from wardwright.model.record import Basis
from wardwright.model.site import Site
from wardwright.trials.climbs import climb_to, sill_above_ground, usual_limits

BODY_GAP_M = (0.25, 0.35)
"""The narrowest and shortest hole a person comes through. [m] (assumption)"""


class WayIn(NamedTuple):
    """One opening and how it is come through."""

    opening: Opening
    manner: Manner
    holds: Figure
    """How long it holds before the clock starts. [s]"""
    holds_basis: Basis
    climbs: bool
    """Whether the intruder climbs in once it is open."""


NO_HOLD = Figure(
    id="no-hold",
    name="before the clock",
    value=0.0,
    low=0.0,
    high=0.0,
    unit="s",
    source="own",
    mark="derived",
)
"""How long an opening still holds once somebody is in."""


def once_in(way: WayIn) -> WayIn:
    """A way in without what is over once somebody is in, so that manners that go on alike are one."""
    return way._replace(manner="opened", holds=NO_HOLD, holds_basis="default")


class OutOfReach(NamedTuple):
    """An opening to the outside that is not counted as a way in, and why."""

    opening: Opening
    reason: str


def ways_in(site: Site, catalogue: Catalogue) -> tuple[tuple[WayIn, ...], tuple[OutOfReach, ...]]:
    """Every way into our spaces, in the order of opening ids, and the openings that are not counted.

    Parameters
    ----------
    site : Site
        The site.
    catalogue : Catalogue
        Locks, glazings and figures.

    Returns
    -------
    ways, not_counted : tuple
        One way for each opening and manner; openings that nobody comes through, with the reason.
    """
    return _ways_in(site.bare, catalogue)


@lru_cache(maxsize=64)
def _ways_in(site: Site, catalogue: Catalogue) -> tuple[tuple[WayIn, ...], tuple[OutOfReach, ...]]:
    ways: list[WayIn] = []
    not_counted: list[OutOfReach] = []
    for opening in sorted(site.openings, key=lambda one: one.id):
        if opening.kind == "rooflight" and opening.joins is None:
            not_counted.append(OutOfReach(opening, "it is not known which space it lights"))
            continue
        if not is_way_in(site, opening):
            continue
        reason = _why_not(site, catalogue, opening)
        if reason is not None:
            not_counted.append(OutOfReach(opening, reason))
            continue
        manners = _manners(opening, catalogue)
        ways.extend(manners)
        if not manners:
            not_counted.append(
                OutOfReach(opening, "it does not open, and no pane is known that could be broken")
            )
    return tuple(ways), tuple(not_counted)


def by_opening(ways: tuple[WayIn, ...]) -> tuple[tuple[WayIn, ...], ...]:
    """The ways in, those of one opening together."""
    found: dict[str, list[WayIn]] = {}
    for way in ways:
        found.setdefault(way.opening.id, []).append(way)
    return tuple(tuple(manners) for manners in found.values())


def leads_outside(site: Site, opening: Opening) -> bool:
    """Whether an opening leads to open air rather than to a shared or neighbouring space."""
    return any(side is None or site.space(side).is_outdoors for side in sides_of_opening(site, opening))


def is_too_small(opening: Opening) -> bool:
    """Whether nobody gets through an opening."""
    tall = opening.head_m - opening.sill_m
    return min(opening.width_m, tall) < BODY_GAP_M[0] or max(opening.width_m, tall) < BODY_GAP_M[1]


def _why_not(site: Site, catalogue: Catalogue, opening: Opening) -> str | None:
    if is_too_small(opening):
        return "too small for a person"
    if not leads_outside(site, opening):
        return None
    climb = climb_to(site, opening, usual_limits(catalogue))
    if climb.is_made:
        return None
    up = f"{sill_above_ground(site, opening):.1f} m above the ground"
    if len(climb.steps) == 1:
        return f"{up} with nothing drawn to climb"
    return f"{up}, and by {climb.steps[-2].name} still {climb.short_m:.1f} m out of reach"


def _manners(opening: Opening, catalogue: Catalogue) -> list[WayIn]:
    climbs = not (opening.kind in ("door", "garage-door", "gap") and opening.sill_m <= 0.3)
    ways: list[WayIn] = []
    if opening.hinge != "fixed":
        unlocked = not opening.is_locked or opening.habit != "shut" or opening.kind == "gap"
        lock = next((row for row in catalogue.locks if row.id == opening.lock), None)
        name = "force-none" if unlocked else "force-plain" if lock is None else lock.force_figure
        field = "is_locked" if unlocked else "lock"
        ways.append(WayIn(opening, "opened", catalogue.figure(name), opening.basis_of(field), climbs))
    glazing = next((row for row in catalogue.glazings if row.id == opening.glazing), None)
    if glazing is not None and glazing.can_be_broken:
        holds = catalogue.figure(glazing.break_figure)
        ways.append(WayIn(opening, "through the glass", holds, opening.basis_of("glazing"), climbs=True))
    return ways
