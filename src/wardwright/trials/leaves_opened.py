"""How the leaves stand that somebody of the household comes by, and which of them they open."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from typing import Literal

from wardwright.model.leaves import state_at_night
from wardwright.model.opening import LeafState, Opening
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Route
from wardwright.trials.leaves_between import states_of

Leaves = Literal["usual", "night", "most"]
"""Leaves as they usually stand, as they stand at night, or each in that of its habitual states that lets most be
seen."""


def state_in(leaves: Leaves, kept_shut: frozenset[str] = frozenset()) -> Callable[[Opening], LeafState]:
    """How each leaf stands that nobody opens.

    Parameters
    ----------
    leaves : {"usual", "night", "most"}
        Which of their habits counts.
    kept_shut : frozenset of str, default none
        Ids of openings that are shut whatever their habit.

    Returns
    -------
    callable
        From an opening to how its leaf stands.
    """

    def state(one: Opening) -> LeafState:
        if one.id in kept_shut:
            return "shut"
        if leaves == "most":
            return states_of(one)[-1]
        return one.habit if leaves == "usual" else state_at_night(one)

    return state


def doors_to_open(
    house: Site, route: Route, leaves: Leaves, *, kept_shut: frozenset[str] = frozenset()
) -> tuple[tuple[int, str], ...]:
    """The leaves that are in the way of a walk and are opened on it, with the point at which each is.

    Parameters
    ----------
    house : Site
        The bare house.
    route : Route
        The walk.
    leaves : {"usual", "night", "most"}
        How they stood before.
    kept_shut : frozenset of str, default none
        Ids of openings that were shut whatever their habit.

    Returns
    -------
    tuple of (int, str)
        In the order of the walk: the point, and the opening's id.
    """
    doors = tuple((leg.first, leg.subject) for leg in route.legs if leg.kind == "door" and leg.subject)
    return _to_open(house, doors, leaves, kept_shut=kept_shut)


@lru_cache(maxsize=1024)
def _to_open(
    house: Site, doors: tuple[tuple[int, str], ...], leaves: Leaves, *, kept_shut: frozenset[str]
) -> tuple[tuple[int, str], ...]:
    state = state_in(leaves, kept_shut)
    each = ((first, house.opening(name)) for first, name in doors)
    return tuple(
        (first, one.id)
        for first, one in each
        if one.kind != "gap" and one.leaves > 0 and state(one) != "open"
    )
