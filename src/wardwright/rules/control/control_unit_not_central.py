"""CTL103: a control unit at one end of the house."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.placement import Standing, standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.entry_routes import place_at, rooms_on_the_way
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.instant_watch import Watched, watched_at_once
from wardwright.rules.kit import control_units, sheets_in_use
from wardwright.rules.outside_view import seen_from_outside, usual_height
from wardwright.rules.power_points import spots_by_power
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.straight_paths import StraightPath, straight_path
from wardwright.rules.suggestion import suggestions
from wardwright.rules.unit_spots import USUAL_HEIGHT_M
from wardwright.rules.wall_spots import WallSpot, room_of

HALVED_DB = 6.0
"""A path whose loss is less by this arrives with twice the field. [dB] (derived here: 20 log10 2)"""
SHORT_DB = 40.0
"""A worst path with less loss than this is short enough. [dB] (assumption: 10 m and four walls)"""
NOT_REACHED = ("keyfob", "router", "transmitter", "control-unit")
"""Kinds that are carried about or wired."""


class Worst(NamedTuple):
    """The radio device that is worst to reach from a place."""

    path: StraightPath
    device: Device


@rule(
    code="CTL103",
    name="control-unit-not-central",
    since="0.1",
    stage="trial use",
    mark="assumption",
    severity="advise",
    sources=("own",),
)
def control_unit_not_central(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Control units whose worst radio path would be halved elsewhere.

    What it checks
        The straight path from each control unit to each radio device: its length, and the walls and floors it
        crosses, 5 dB for a wall and 9 dB for a floor. If at a power point in another dry place, off the way in, the
        worst of them would lose 6 dB less, which is twice the field, the unit is not central. Paths of less than 25
        dB are left alone. The losses are rough assumptions, the same for every wall.
    Why it matters
        The worst path decides: it is lost first in rain, with a cold cell, or when somebody stands before the
        device.
    How to put it right
        Hang the unit at the place given before any hole is drilled, and read the level of every device there with
        all doors shut. Otherwise a repeater between.
    What it cannot know
        What the walls are made of, foil, mirrors and steel; what else sends nearby. The levels on site decide.

    Parameters
    ----------
    site : Site
        The house, its power points and devices.
    catalogue : Catalogue
        The devices' sheets, and the length of a lead.

    Yields
    ------
    Finding
        One for each such unit, with the length of its worst path, held against the worst at the better place [m].

    Raises
    ------
    NoneOfAKind
        If there is no control unit.
    NotComputable
        If there is no radio device or no power point is drawn.
    """
    this = control_unit_not_central
    units = control_units(site, catalogue)
    radio = tuple(
        device
        for device, sheet in sheets_in_use(site, catalogue)
        if sheet.link == "radio" and sheet.kind not in NOT_REACHED
    )
    if not radio:
        raise NotComputable("no radio device", cure="Add the devices that are planned")
    for unit, _ in units:
        height = usual_height(unit, USUAL_HEIGHT_M)
        here = standing(site, unit)
        now = worst_from(site, here, radio)
        if now.path.loss_db < SHORT_DB:
            continue
        best = _best(site, catalogue, radio, height_m=height)
        if best is None or best[0].path.loss_db > now.path.loss_db - HALVED_DB:
            continue
        then, spot = best
        mends = (Mend(action="move-device", subject=unit.id, values=spot.values(height)),)
        new = suggestions(site, mends)
        far = standing(site, now.device)
        yield this.finding(
            unit.id,
            f"{unit.name}: its worst radio path, to {now.device.name}, goes {now.path.words}; at the place given the"
            f" worst is {then.path.length_m:.1f} m {then.path.words}, and arrives with twice the field or more",
            cure=f"Move it to the place given, in {new[0].label}",
            estimate=exactly(
                now.path.length_m, "m", weakest(unit.basis_of("mount"), now.device.basis_of("mount"))
            ),
            limit=then.path.length_m,
            mends=mends,
            sketches=(
                Sketch(role="fault", storey=here.storey, points=_line(here, far), label=now.device.name),
                *new,
            ),
            related=(now.device.id,),
        )


def worst_from(site: Site, place: Standing, radio: tuple[Device, ...]) -> Worst:
    """The device with the greatest loss from a place; of two alike the first by id."""
    paths = [Worst(straight_path(site, place, standing(site, device)), device) for device in radio]
    return max(paths, key=lambda one: (round(one.path.loss_db, 6), one.device.id))


def _best(
    site: Site, catalogue: Catalogue, radio: tuple[Device, ...], *, height_m: float
) -> tuple[Worst, WallSpot] | None:
    """The best place by a power point: off the way in, watched if any is, unseen before others, least loss."""
    on_route = rooms_on_the_way(site, catalogue) or frozenset()
    lead = catalogue.limit("lead-to-power", site.place.rule_pack).value
    found = [
        (worst_from(site, spot.standing(height_m), radio), spot)
        for spot in spots_by_power(site, height_m=height_m, lead_m=lead)
        if spot.space not in on_route
    ]
    watched = watched_at_once(site, catalogue) if site.zones else None
    fit = [one for one in found if watched is None or _is_watched(site, watched, one[1])]
    fit.sort(key=lambda one: (seen_from_outside(site, one[1].standing(height_m)) != (), _order(one)))
    return fit[0] if fit else None


def _is_watched(site: Site, watched: Watched, spot: WallSpot) -> bool:
    before = place_at(site, spot)
    return bool(watched.by(spot.storey, before, room=room_of(site, spot.storey, before)))


def _order(one: tuple[Worst, WallSpot]) -> tuple[float, WallSpot]:
    return (round(one[0].path.loss_db, 6), one[1])


def _line(here: Standing, far: Standing) -> tuple[tuple[float, float], ...]:
    """The path on the plan, where both ends are on one storey and apart."""
    ends = ((here.x_m, here.y_m), (far.x_m, far.y_m))
    return ends if here.storey == far.storey and not math.isclose(math.dist(*ends), 0.0) else ends[:1]
