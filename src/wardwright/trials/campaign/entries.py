"""By which of a house's ways intruders come in: a table of shares, spread over the openings that there are."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from typing import NamedTuple

from wardwright.model.catalogue import Catalogue
from wardwright.model.entry_shares import EntryKind, EntryShare, Face, Height, HouseType
from wardwright.model.opening import Opening
from wardwright.model.placement import direction, opening_line, sides_of_opening
from wardwright.model.site import Site
from wardwright.trials.climbs import sill_above_ground, usual_limits
from wardwright.trials.ways_in import WayIn, by_opening, leads_outside

BELOW_M = -0.5
"""An opening whose lower edge lies this far under the ground outside is one below the ground. [m] (assumption)"""
FRONT_RAD = math.radians(45.0)
"""An opening that faces within this of the entry door is at the front. [rad] (assumption)"""


class Entries(NamedTuple):
    """Which way in intruders take."""

    shares: Mapping[str, float]
    """Opening -> share of all intruders. [-]"""
    rows: tuple[EntryShare, ...]
    """The rows that they are from."""


class _Seen(NamedTuple):
    kind: EntryKind
    face: Face | None
    """None: there is no entry door to say where the front is."""
    level: Height


def entries_of(site: Site, catalogue: Catalogue, ways: Sequence[WayIn]) -> Entries:
    """Spread a table of shares over the ways into a house.

    Parameters
    ----------
    site : Site
        The site; its country chooses the table.
    catalogue : Catalogue
        Its tables.
    ways : sequence of WayIn
        The ways in.

    Returns
    -------
    Entries
        Shares that sum to 1, unless there is no way in.
    """
    openings = [manners[0].opening for manners in by_opening(tuple(ways))]
    front = _front(site)
    rows = _table(site, catalogue)
    of_row: dict[str, list[str]] = {}
    for opening in openings:
        seen = _seen(site, opening, front=front, upper_m=usual_limits(catalogue).from_ground)
        row = next((one for one in rows if _fits(one, seen)), None)
        if row is not None:
            of_row.setdefault(row.id, []).append(opening.id)
    used = tuple(row for row in rows if row.id in of_row)
    whole = sum(row.share for row in used)
    shares = {opening: row.share / whole / len(of_row[row.id]) for row in used for opening in of_row[row.id]}
    # Where no row fits anything, each opening is alike.
    alone = 0.0 if used else 1.0 / max(1, len(openings))
    return Entries({opening.id: shares.get(opening.id, alone) for opening in openings}, used)


def house_type(site: Site) -> HouseType:
    """`flat` where the household comes in from a shared space; otherwise `house`."""
    doors = [one for one in site.openings if one.is_entry_door]
    return "flat" if doors and not any(leads_outside(site, one) for one in doors) else "house"


def _table(site: Site, catalogue: Catalogue) -> tuple[EntryShare, ...]:
    """The rows of the site's country and type of house, the narrowest first; without any, those of no country."""
    kind = house_type(site)
    fitting = [row for row in catalogue.entry_shares if row.house in (None, kind)]
    own = [row for row in fitting if row.country is not None and row.country == site.place.country]
    found = own or [row for row in fitting if row.country is None]

    def width(row: EntryShare) -> tuple[int, str]:
        return (sum(one is None for one in (row.kind, row.face, row.level)), row.id)

    return tuple(sorted(found, key=width))


def _fits(row: EntryShare, seen: _Seen) -> bool:
    """Whether an opening belongs to a class; where the front is not known, any side does."""
    face = seen.face is None or row.face in (None, seen.face)
    return face and row.kind in (None, seen.kind) and row.level in (None, seen.level)


def _seen(site: Site, opening: Opening, *, front: float | None, upper_m: float) -> _Seen:
    kind: EntryKind = (
        "garage-door"
        if opening.kind == "garage-door"
        else "window"
        if opening.kind in ("window", "rooflight")
        else "door"
    )
    up = sill_above_ground(site, opening)
    level: Height = "upper" if up > upper_m else "below" if up < BELOW_M else "ground"
    if front is None:
        return _Seen(kind, None, level)
    turned = abs(math.remainder(_outward(site, opening) - front, 2.0 * math.pi))
    return _Seen(kind, "front" if turned <= FRONT_RAD + 1e-9 else "back", level)


def _front(site: Site) -> float | None:
    """Where the first entry door faces. [rad]"""
    doors = sorted((one for one in site.openings if one.is_entry_door), key=lambda one: one.id)
    return _outward(site, doors[0]) if doors else None


def _outward(site: Site, opening: Opening) -> float:
    """Where an opening faces, seen from our rooms. [rad]"""
    _, (nx, ny), _ = direction(opening_line(site.wall(opening.wall), opening))
    left, _ = sides_of_opening(site, opening)
    is_ours_left = left is not None and site.space(left).is_protected
    return math.atan2(-ny, -nx) if is_ours_left else math.atan2(ny, nx)
