"""A mend, which is data, carried out on a site: a new site that shares what did not change."""

from __future__ import annotations

from typing import Any

from pydantic import TypeAdapter

from wardwright.model.device import Device, Mount
from wardwright.model.site import Site
from wardwright.rules.finding import Mend

MOUNTS: TypeAdapter[Mount] = TypeAdapter(Mount)
OF_THE_DEVICE = Device.model_fields.keys() - {"mount"}
"""What a mend names of the device itself; all else is of its mount."""


def mended(site: Site, mend: Mend) -> Site:
    """The site with one mend carried out; a mend it does not know is an error of the test."""
    values = dict(mend.values)
    if mend.action == "rename":
        zones = tuple(
            zone.model_copy(update=values) if zone.id == mend.subject else zone for zone in site.zones
        )
        return site.model_copy(update={"zones": zones})
    assert mend.action in ("move-device", "turn-device", "change-device", "change-mount"), mend.action
    assert mend.subject in {device.id for device in site.devices}
    devices = tuple(
        changed(device, values) if device.id == mend.subject else device for device in site.devices
    )
    return site.model_copy(update={"devices": devices})


def changed(device: Device, values: dict[str, Any]) -> Device:
    own = {name: values.pop(name) for name in sorted(OF_THE_DEVICE & values.keys())}
    if {"x_m", "y_m"} <= set(values):
        values["at_m"] = (values.pop("x_m"), values.pop("y_m"))
    mount = values if "on" in values else device.mount.model_dump() | values
    return Device(**(device.model_dump() | {"mount": MOUNTS.validate_python(mount)} | own))
