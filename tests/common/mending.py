"""A mend, which is data, carried out on a site: a new site that shares what did not change."""

from __future__ import annotations

from typing import Any

from pydantic import TypeAdapter

from wardwright.model.device import Device, Mount
from wardwright.model.programme import Programme, Response
from wardwright.model.site import Site
from wardwright.rules.finding import Mend

MOUNTS: TypeAdapter[Mount] = TypeAdapter(Mount)
OF_THE_DEVICE = Device.model_fields.keys() - {"mount"}
"""What a mend names of the device itself; all else is of its mount."""

OF_A_DEVICE = ("move-device", "turn-device", "change-device", "change-mount", "replace-device")


def mended(site: Site, mend: Mend) -> Site:
    """The site with one mend carried out; a mend it does not know is an error of the test."""
    values = dict(mend.values)
    if mend.action == "rename":
        zones = tuple(
            zone.model_copy(update=values) if zone.id == mend.subject else zone for zone in site.zones
        )
        return site.model_copy(update={"zones": zones})
    if mend.action == "change-programme":
        return with_programme(site, values)
    if mend.action == "add-device":
        return site.model_copy(update={"devices": (*site.devices, added(site, mend))})
    if mend.action == "change-behaviour":
        assert set(values) == {"behaviour"}, values
        assert mend.subject in {one.id for one in site.zones}
        return site.model_copy(
            update={
                "zones": tuple(
                    one.model_copy(update=values) if one.id == mend.subject else one for one in site.zones
                )
            }
        )
    if mend.action == "change-covering":
        openings = tuple(
            one.model_copy(update=values) if one.id == mend.subject else one for one in site.openings
        )
        return site.model_copy(update={"openings": openings})
    assert mend.action in OF_A_DEVICE, mend.action
    assert mend.subject in {device.id for device in site.devices}
    devices = tuple(
        changed(device, values) if device.id == mend.subject else device for device in site.devices
    )
    return site.model_copy(update={"devices": devices})


def added(site: Site, mend: Mend) -> Device:
    """A device on the opening that the mend is about, or where its values say."""
    values = dict(mend.values)
    sheet = values.pop("sheet")
    values.pop("behaviour", None)
    if not values:
        assert mend.subject in {one.id for one in site.openings}
        values = {"on": "opening", "opening": mend.subject}
    if {"x_m", "y_m"} <= set(values):
        values["at_m"] = (values.pop("x_m"), values.pop("y_m"))
    heading = values.pop("heading_deg", None)
    number = sum(one.id.startswith("added") for one in site.devices)
    return Device(
        id=f"added-{number}",
        name="added",
        sheet=sheet,
        mount=MOUNTS.validate_python(values),
        heading_deg=heading,
    )


def with_programme(site: Site, values: dict[str, Any]) -> Site:
    """Times of the programme, who is told, or what follows a signal in one state or any."""
    changes = dict(values)
    if "told" in changes:
        changes["told"] = (changes["told"],)
    if "signal" in changes:
        states = ("unset", "part set", "set") if changes["state"] == "any" else (changes["state"],)
        new = tuple(Response(**(changes | {"state": state})) for state in states)
        kept = tuple(
            one
            for one in site.programme.responses
            if (one.signal, one.state) not in {(n.signal, n.state) for n in new}
        )
        changes = {"responses": (*kept, *new)}
    programme = Programme(**(site.programme.model_dump(exclude_unset=True) | changes))
    return site.model_copy(update={"programme": programme})


def changed(device: Device, values: dict[str, Any]) -> Device:
    held = {key: values[key] for key in ("by", "is_heated_before") if key in values}
    if held:
        assert device.fixing is not None
        return device.model_copy(update={"fixing": device.fixing.model_copy(update=held)})
    own = {name: values.pop(name) for name in sorted(OF_THE_DEVICE & values.keys())}
    if {"x_m", "y_m"} <= set(values):
        values["at_m"] = (values.pop("x_m"), values.pop("y_m"))
    mount = values if "on" in values else device.mount.model_dump() | values
    return Device(**(device.model_dump() | {"mount": MOUNTS.validate_python(mount)} | own))
