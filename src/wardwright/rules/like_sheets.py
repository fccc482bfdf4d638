"""Movement detectors of other sheets that could hang where one hangs, and do nearly what it does."""

from __future__ import annotations

from wardwright.model.device import USUAL_MOUNTS, Device, WallMount
from wardwright.model.device_sheets import DeviceSheet, MovementSheet

LIKE_REACH, LIKE_ANGLE = 0.9, 0.8
"""A sheet that takes the place of another has at least these shares of its reach and fan. [-] (assumption)"""
Values = tuple[tuple[str, str | float | int | bool], ...]


def is_alike(row: DeviceSheet, table: MovementSheet, device: Device, *, sheet: MovementSheet) -> bool:
    """Whether a sheet hangs as a detector does, and reaches and spans nearly as far.

    Parameters
    ----------
    row : DeviceSheet
        The sheet that is thought of.
    table : MovementSheet
        What it says of movement.
    device : Device
        The detector.
    sheet : MovementSheet
        The sheet that it has.
    """
    if device.mount.on not in (row.mounts or USUAL_MOUNTS[row.kind]):
        return False
    return table.reach_m >= LIKE_REACH * sheet.reach_m and table.angle_deg >= LIKE_ANGLE * sheet.angle_deg


def hung_for(device: Device, table: MovementSheet) -> tuple[Values, Device]:
    """A detector at the nearest height that another sheet allows, and what that changes."""
    if not isinstance(device.mount, WallMount):
        return (), device
    height = min(max(device.mount.height_m, table.height_low_m), table.height_high_m)
    if height == device.mount.height_m:
        return (), device
    mount = device.mount.model_copy(update={"height_m": height})
    return (("height_m", height),), device.model_copy(update={"mount": mount})
