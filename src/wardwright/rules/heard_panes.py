"""Whether a glass-break detector hears a pane break, by all that its sheet asks for."""

from __future__ import annotations

from wardwright.model.device import Device
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.opening import Opening
from wardwright.model.site import Site
from wardwright.rules.panes_in_earshot import ear_of, hears, panes_of


def shorter_side_m(pane: Opening) -> float:
    """The shorter side of one leaf's share of an opening. [m]"""
    return min(pane.width_m / max(pane.leaves, 1), pane.head_m - pane.sill_m)


def is_heard(site: Site, device: Device, row: DeviceSheet, *, pane: Opening) -> bool:
    """Whether a glass-break detector hears a pane break, by all that its sheet asks for.

    Parameters
    ----------
    site : Site
        The house.
    device : Device
        The detector.
    row : DeviceSheet
        Its sheet.
    pane : Opening
        The pane, of the room that the detector is in.

    Returns
    -------
    bool
        False too where its glass is not known, or the sheet does not name any.
    """
    ear = ear_of(site, device, row)
    return (
        pane.glazing in ear.sheet.glazings
        and shorter_side_m(pane) >= ear.sheet.least_pane_m
        and pane in panes_of(site, ear.room)
        and hears(
            site,
            ear.storey,
            ear.point,
            opening=pane,
            sheet=ear.sheet,
            is_curtained=pane.covering != "none",
        )
    )
