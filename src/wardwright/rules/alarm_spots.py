"""Places on ceilings for smoke, heat and CO alarms."""

from __future__ import annotations

from collections.abc import Callable

from wardwright.model.catalogue import Catalogue
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.fabric import Space
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.rules.ceiling_spots import ceiling_spots, moved_on_ceiling
from wardwright.rules.finding import Mend
from wardwright.rules.fire_alarms import Alarm, to_walls_m

ROUNDING_M = 1e-6
"""Distances closer to a limit than this are at it. [m] (assumption)"""


def alarm_spot(
    site: Site,
    catalogue: Catalogue,
    space: Space,
    *,
    nearest_to: Point2,
    fits: Callable[[Point2], bool] = lambda _: True,
) -> Point2 | None:
    """The nearest place on a ceiling that fits, as far from the walls as the rule pack asks of ceiling alarms.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        The limits.
    space : Space
        The room.
    nearest_to : (float, float)
        A place of the plan. [m]
    fits : callable
        Whether a place will do.

    Returns
    -------
    (float, float) or None
        None if no place fits. [m]
    """
    asked = catalogue.limits_in("alarm-to-wall", site.place.rule_pack)
    least = asked[0].value - ROUNDING_M if asked else 0.0
    for point in ceiling_spots(space, nearest_to=nearest_to):
        if to_walls_m(site, space.storey, point) >= least and fits(point):
            return point
    return None


def moved_alarm(
    site: Site, catalogue: Catalogue, alarm: Alarm, *, fits: Callable[[Point2], bool] = lambda _: True
) -> tuple[Mend, ...]:
    """The mend that moves an alarm on the ceiling of its own space; empty if no place fits."""
    if alarm.space is None or not alarm.may_hang:
        return ()
    spot = alarm_spot(site, catalogue, alarm.space, nearest_to=alarm.point, fits=fits)
    return () if spot is None else (moved_on_ceiling(alarm.device, alarm.place.storey, spot),)


def added_alarm(row: DeviceSheet, space: Space, spot: Point2 | None) -> tuple[Mend, ...]:
    """The mend that adds an alarm on a ceiling; empty without a place."""
    if spot is None:
        return ()
    values = (
        ("sheet", row.id),
        ("on", "ceiling"),
        ("storey", space.storey),
        ("x_m", spot[0]),
        ("y_m", spot[1]),
    )
    return (Mend(action="add-device", subject=space.id, values=values),)
