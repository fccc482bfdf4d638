"""What makes up for one thing lost: a second path, a battery, a sounder that needs nobody, another detector."""

from __future__ import annotations

import math

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.estimate import Estimate
from wardwright.model.placement import standing
from wardwright.model.programme import Zone
from wardwright.model.site import Site
from wardwright.questions.changes_tried import changes_for
from wardwright.rules.finding import Mend
from wardwright.rules.power.standby_shorter_than_the_grade_asks import standby_hours
from wardwright.rules.replacement import replaced
from wardwright.rules.wall_spots import Value, room_of, wall_spots
from wardwright.trials.single_loss import Router, message_paths
from wardwright.trials.watchers import control_units, devices_of, notices_on
from wardwright.trials.ways_in import WayIn

BESIDE_M = 0.3
"""Between the middles of two boxes on a wall, at least. [m] (assumption: room for both lids)"""
IN_HAND = Estimate(value=1.0, low=1.0, high=1.0, unit="s")
"""Time in hand that keeps the control unit where it is: another place for it is no cure for a detector lost. [s]"""


def second_path(site: Site, catalogue: Catalogue, *, beside: str = "") -> tuple[Mend, ...]:
    """A message path by mobile data, with a standby of its own, in the place of one that needs the router.

    Parameters
    ----------
    site : Site
        The devices.
    catalogue : Catalogue
        The sheets to choose from.
    beside : str, default ""
        Id of a transmitter that is lost: then one is added, for one in its place would be lost as well.

    Returns
    -------
    tuple of Mend
        Empty where there is one already, or the catalogue has none.
    """
    paths = tuple(path for path in message_paths(site, catalogue) if path.transmitter.id != beside)
    if any(path.by == "mobile" for path in paths):
        return ()

    def fits(sheet: DeviceSheet) -> bool:
        one = sheet.transmitter
        return one is not None and "mobile" in one.paths and one.standby_h > 0.0

    if paths:
        return replaced(catalogue, paths[0].transmitter, fits=fits)
    units = control_units(site, catalogue)
    sheets = sorted((one for one in catalogue.sheets if fits(one)), key=lambda one: one.cheapest_first)
    return tuple(
        Mend(action="add-device", subject=unit.id, values=(("sheet", sheet.id), *_beside(site, unit)))
        for unit in units[:1]
        for sheet in sheets[:1]
    )


def _beside(site: Site, unit: Device) -> tuple[tuple[str, Value], ...]:
    """The mount of what is fitted beside a device: the free place on its room's walls that is nearest to it.

    Where its room has none, or it is in no room, at the unit's own place: the fitter sees to it.
    """
    at = standing(site, unit)
    spots = (
        spot
        for space in room_of(site, at.storey, (at.x_m, at.y_m))
        for spot in wall_spots(site, space, height_m=at.height_m)
    )
    away = [(math.dist((at.x_m, at.y_m), (spot.x_m, spot.y_m)), spot) for spot in spots]
    near = min((one for one in away if one[0] >= BESIDE_M), default=None)
    if near is not None:
        return near[1].values(at.height_m)
    return (
        ("on", "free"), ("storey", at.storey), ("x_m", at.x_m), ("y_m", at.y_m), ("height_m", at.height_m),
    )  # fmt: skip


def router_back_up(catalogue: Catalogue, router: Router) -> tuple[Mend, ...]:
    """A battery for a router; where it is drawn as a point, as a device in its place.

    Parameters
    ----------
    catalogue : Catalogue
        The sheets to choose from.
    router : Router
        As found.

    Returns
    -------
    tuple of Mend
        Empty where it has one already, or the catalogue has none.
    """
    if router.device is not None:
        return (
            ()
            if catalogue.sheet(router.device.sheet).standby is not None
            else replaced(catalogue, router.device, fits=lambda sheet: sheet.standby is not None)
        )
    sheet = next((one for one in catalogue.sheets if one.kind == "router" and one.standby is not None), None)
    outlet = router.outlet
    if sheet is None or outlet is None:
        return ()
    x, y = outlet.at_m
    values = (
        ("sheet", sheet.id), ("on", "free"), ("storey", outlet.storey), ("x_m", x), ("y_m", y),
        ("height_m", outlet.height_m), ("name", outlet.name),
    )  # fmt: skip
    return (Mend(action="add-device", subject=outlet.id, values=values),)


def longer_standby(site: Site, catalogue: Catalogue, unit: Device, *, least: float) -> tuple[Mend, ...]:
    """A control unit whose battery carries on for so many hours.

    Parameters
    ----------
    site : Site
        For its rule pack.
    catalogue : Catalogue
        The sheets to choose from.
    unit : Device
        The control unit.
    least : float
        How long it is to go on. [h]

    Returns
    -------
    tuple of Mend
        Empty if the catalogue has none.
    """

    def lasts(sheet: DeviceSheet) -> bool:
        hours = standby_hours(sheet, catalogue, pack=site.place.rule_pack)
        return hours is not None and hours.value >= least

    return replaced(catalogue, unit, fits=lasts)


def own_power_sounders(site: Site, catalogue: Catalogue) -> tuple[Mend, ...]:
    """A sounder that sounds by itself when it loses the control unit, in the place of the first that does not."""
    for sounder in devices_of(site, catalogue, "sounder"):
        mends = replaced(
            catalogue, sounder, fits=lambda sheet: sheet.sounder is not None and sheet.sounder.is_self_powered
        )
        if mends:
            return mends
    return ()


def second_eye(site: Site, catalogue: Catalogue, way: WayIn, *, lost: Device) -> tuple[Mend, ...]:
    """A detector that notices on a way in when another is lost: the first that was tried and does.

    Parameters
    ----------
    site : Site
        As it is.
    catalogue : Catalogue
        Sheets and figures.
    way : WayIn
        The way in that only the lost device notices on.
    lost : Device
        What is lost.

    Returns
    -------
    tuple of Mend
        At most one.
    """
    without = site.model_copy(
        update={
            "devices": tuple(one for one in site.devices if one.id != lost.id),
            "zones": _without(site, lost),
        }
    )
    try:
        tried = changes_for(without, catalogue, way, now=IN_HAND)
    except NotComputable:
        return ()
    for action, subject, values, trial in tried:
        known = {device.id for device in site.devices}
        new = [device for device, _ in trial.alarm.heard if device.id not in known]
        # What stands where the lost one stands would be lost alike.
        is_other = all(device.mount != lost.mount for device in new)
        if (
            action == "add-device"
            and new
            and is_other
            and any(
                notices_on(site.bare, catalogue, device, way=way, goal=trial.goal) is not None
                for device in new
            )
        ):
            return (Mend(action=action, subject=subject, values=values),)
    return ()


def _without(site: Site, lost: Device) -> tuple[Zone, ...]:
    """The zones without one device."""
    return tuple(
        zone.model_copy(update={"devices": tuple(one for one in zone.devices if one != lost.id)})
        for zone in site.zones
    )
