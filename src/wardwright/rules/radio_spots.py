"""Better places for radio: a repeater by a power point, the control unit or a device elsewhere, each tried out."""

from __future__ import annotations

from functools import lru_cache

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, WallMount
from wardwright.model.estimate import Estimate
from wardwright.model.fixture import Outlet
from wardwright.model.placement import space_at, standing
from wardwright.model.record import Point3
from wardwright.model.site import Site
from wardwright.rules.finding import Mend
from wardwright.rules.likely_margins import likely_margins
from wardwright.rules.power_points import spots_by_power
from wardwright.rules.radio_belief import ReadDevice
from wardwright.rules.radio_hops import End, Heard, Hop
from wardwright.rules.radio_links import links_with
from wardwright.rules.wall_spots import WallSpot, wall_spots

REPEATER_M = 1.8
"""Where a repeater hangs. [m] (assumption)"""
WORTH_DB = 3.0
"""A change that brings less is not named. [dB] (assumption)"""
MAY_MOVE = ("keypad", "sounder", "repeater")
"""Kinds that do their work as well at another place of their room. (common practice)"""
NEW_ID = "new-repeater"


def repeater_mend(
    site: Site,
    catalogue: Catalogue,
    device: Device,
    *,
    hop: Hop,
    heard: Heard,
    readings: tuple[ReadDevice, ...],
) -> tuple[Mend, ...]:
    """A repeater at the power point from which the worse of its two hops is best; empty where it brings little.

    Parameters
    ----------
    site : Site
        With its power points.
    catalogue : Catalogue
        With a repeater.
    device : Device
        What is heard too weakly.
    hop : Hop
        Its straight hop to what is to hear it.
    heard : Heard
        What hears it now.
    readings : tuple of ReadDevice
        What was read on site.

    Returns
    -------
    tuple of Mend
        At most one, with the margin it would have.
    """
    return _repeater(
        site.bare, site.outlets, catalogue, device=device, hop=hop, heard=heard, readings=readings
    )


@lru_cache(maxsize=512)
def _repeater(
    house: Site,
    outlets: tuple[Outlet, ...],
    catalogue: Catalogue,
    *,
    device: Device,
    hop: Hop,
    heard: Heard,
    readings: tuple[ReadDevice, ...],
) -> tuple[Mend, ...]:
    rows = [
        row
        for row in catalogue.sheets
        if row.kind == "repeater" and row.radio is not None and row.frequency_mhz == hop.frequency_mhz
    ]
    if not rows or catalogue.sheet(device.sheet).kind in ("camera", "repeater"):
        return ()
    row = min(rows, key=lambda one: one.cheapest_first)
    spots = _power_spots(house, outlets, catalogue, height_m=REPEATER_M)
    if not spots or row.radio is None:
        return ()
    radio = row.radio
    places = [spot_place(house, spot, REPEATER_M) for spot in spots]
    end = End(NEW_ID, "a repeater", places[0], radio.power_dbm, radio.sensitivity_dbm, radio.is_two_way)
    onward = Hop(end, hop.receiver, hop.frequency_mhz, has_body=False)
    there, back = (
        likely_margins(house, catalogue, one, ways=[(other, place) for place in places], readings=readings)
        for one, other in ((hop._replace(receiver=end), hop.sender.place), (onward, hop.receiver.place))
    )
    worse = [min(pair) for pair in zip(there, back, strict=True)]
    best = max(range(len(spots)), key=lambda i: (round(worse[i], 6), -i))
    new = Device(id=NEW_ID, name="a repeater", sheet=row.id, mount=_mount(spots[best], REPEATER_M))
    more = heard._replace(repeaters=(*heard.repeaters, new))
    after = links_with(house, catalogue, device, heard=more, readings=readings)[0].margin
    values = (("sheet", row.id), *spots[best].values(REPEATER_M))
    mend = Mend(action="add-device", subject=spots[best].space, values=values, gain=after)
    now = links_with(house, catalogue, device, heard=heard, readings=readings)[0].margin
    return (mend,) if after.value - now.value >= WORTH_DB else ()


def _power_spots(
    house: Site, outlets: tuple[Outlet, ...], catalogue: Catalogue, *, height_m: float
) -> tuple[WallSpot, ...]:
    lead = catalogue.limit("lead-to-power", house.place.rule_pack).value
    try:
        wired = house.model_copy(update={"outlets": outlets})
        return tuple(spots_by_power(wired, height_m=height_m, lead_m=lead))
    except NotComputable:
        return ()


def spot_place(house: Site, spot: WallSpot, height_m: float) -> Point3:
    """A place on a wall, above the house's zero. [m]"""
    return (spot.x_m, spot.y_m, house.storey(spot.storey).elevation_m + height_m)


def _mount(spot: WallSpot, height_m: float) -> WallMount:
    return WallMount(wall=spot.wall, side=spot.side, offset_m=spot.offset_m, height_m=height_m)


def other_place_mend(
    site: Site,
    catalogue: Catalogue,
    device: Device,
    *,
    hop: Hop,
    heard: Heard,
    readings: tuple[ReadDevice, ...],
) -> tuple[Mend, ...]:
    """Another place on the walls of its own room, for kinds that work as well there; empty where it brings little.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        Sheets and losses.
    device : Device
        What is heard too weakly.
    hop : Hop
        Its hop to what hears it.
    heard : Heard
        What hears it now.
    readings : tuple of ReadDevice
        What was read on site.

    Returns
    -------
    tuple of Mend
        At most one, with the margin it would have.
    """
    house, sheet = site.bare, catalogue.sheet(device.sheet)
    if not isinstance(device.mount, WallMount) or sheet.kind not in MAY_MOVE or sheet.is_outside:
        return ()
    at = standing(house, device)
    space = space_at(house, at.storey, (at.x_m, at.y_m))
    spots = () if space is None else wall_spots(house, space, height_m=at.height_m)
    if not spots:
        return ()
    places = [spot_place(house, spot, at.height_m) for spot in spots]
    ways = [(place, hop.receiver.place) for place in places]
    margins = likely_margins(house, catalogue, hop, ways=ways, readings=readings)
    best = max(range(len(spots)), key=lambda i: (round(margins[i], 6), -i))
    there = device.model_copy(update={"mount": _mount(spots[best], at.height_m)})
    after: Estimate = links_with(house, catalogue, there, heard=heard, readings=readings)[0].margin
    now = links_with(house, catalogue, device, heard=heard, readings=readings)[0].margin
    if after.value - now.value < WORTH_DB:
        return ()
    return (
        Mend(action="move-device", subject=device.id, values=spots[best].values(at.height_m), gain=after),
    )
