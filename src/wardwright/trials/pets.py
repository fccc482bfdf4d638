"""Animals at large while the alarm is set: the rooms that stand open to them."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from wardwright.model.floor import lets_through
from wardwright.model.opening import Opening
from wardwright.model.placement import sides_of_opening
from wardwright.model.site import Site
from wardwright.rules.animal_tops import tops_of
from wardwright.trials.leaves_between import states_of


class OpenTo(NamedTuple):
    """A space that an animal gets into from those where it is told to stay."""

    space: str
    by: str
    """Id of the door, open edge or stair that lets it in."""
    is_door: bool
    """Whether a leaf could keep it out."""
    before: str
    """The space it comes from."""


def ways_to(entered: tuple[OpenTo, ...], space: str) -> tuple[OpenTo, ...]:
    """What an animal passes on its way into a space that stands open to it, the space's own door first."""
    by_space = {one.space: one for one in entered}
    found = []
    while space in by_space:
        found.append(by_space[space])
        space = found[-1].before
    return tuple(found)


@lru_cache(maxsize=256)
def open_to(house: Site, rooms: frozenset[str], shut: frozenset[str] = frozenset()) -> tuple[OpenTo, ...]:
    """The spaces that stand open to an animal beside its own, by day or by night, nearest first.

    Parameters
    ----------
    house : Site
        The bare house; leaves as they are told to stand by habit, open where nobody has said.
    rooms : frozenset of str
        Ids of the spaces where it stays.
    shut : frozenset of str, default frozenset()
        Ids of doors that are kept shut whatever the habit.

    Returns
    -------
    tuple of OpenTo
        Indoors and ours.
    """
    links = [link for link in _links(house) if link.by not in shut]
    inside = {one.id for one in house.spaces if one.is_protected}
    found: list[OpenTo] = []
    there, edge = set(rooms), sorted(rooms)
    while edge:
        further = []
        for space in edge:
            for link in links:
                other = link.other(space)
                if other is not None and other in inside and other not in there:
                    there.add(other)
                    further.append(other)
                    found.append(OpenTo(other, link.by, link.is_door, space))
        edge = sorted(further)
    return tuple(found)


class _Link(NamedTuple):
    spaces: tuple[str, str]
    by: str
    is_door: bool

    def other(self, space: str) -> str | None:
        """The space at the other end; None where it is at neither."""
        one, two = self.spaces
        return two if space == one else one if space == two else None


@lru_cache(maxsize=64)
def _links(house: Site) -> tuple[_Link, ...]:
    """What an animal passes by, in the order of ids; doors that are told to be always shut are not among them."""
    found = [_Link(edge.spaces, edge.id, is_door=False) for edge in house.open_edges]
    for opening in house.openings:
        one, two = sides_of_opening(house, opening)
        if one and two and lets_through(opening) and stands_open(opening):
            found.append(_Link((one, two), opening.id, is_door=opening.kind != "gap"))
    ends = {top.thing: top.spaces for top in tops_of(house) if top.kind == "stair"}
    for stair in house.stairs:
        spaces = ends.get(stair.id, ())
        if len(spaces) == 2:
            found.append(_Link((spaces[0], spaces[1]), stair.id, is_door=False))
    return tuple(sorted(found, key=lambda link: link.by))


def stands_open(opening: Opening) -> bool:
    """Whether a leaf may stand open or ajar by habit, by day or by night."""
    return opening.kind == "gap" or states_of(opening) != ("shut",)


def door_between(house: Site, space: str, rooms: frozenset[str]) -> str | None:
    """The one door that keeps an animal in some rooms out of a space; None where one door alone does not."""
    ways = [link for link in _links(house) if link.other(space) in rooms]
    return ways[0].by if len(ways) == 1 and ways[0].is_door else None
