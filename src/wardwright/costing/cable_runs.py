"""How long the cable of a wired device is: along walls and floors to the control unit, before detours."""

from __future__ import annotations

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.rules.footings import level_of_place
from wardwright.trials.watchers import control_units

AT_THE_UNIT = ("transmitter", "router")
"""Kinds that stand beside the control unit or have a cable of their own."""
ALONE = ("smoke-alarm", "heat-alarm", "co-alarm")
"""Kinds that a wired link joins to nothing of ours where they are not linked."""


def cable_run_m(site: Site, catalogue: Catalogue, device: Device) -> float | None:
    """The way of a device's cable along the two directions of the plan and the height.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        Says which is the control unit.
    device : Device
        A wired one.

    Returns
    -------
    float or None
        None where there is no control unit to run it to. [m]
    """
    sheet = catalogue.sheet(device.sheet)
    is_alone = sheet.kind in ALONE and sheet.fire is not None and not sheet.fire.is_linked
    if sheet.kind in AT_THE_UNIT or sheet.kind == "control-unit" or is_alone:
        return 0.0
    units = control_units(site, catalogue)
    if not units:
        return None
    one, other = standing(site, device), standing(site, units[0])
    up = abs(level_of_place(site, one) - level_of_place(site, other))
    return abs(one.x_m - other.x_m) + abs(one.y_m - other.y_m) + up
