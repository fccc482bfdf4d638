"""The alarm as far as a race hangs on it, so that what is remembered by it outlives every other change of a site."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, DeviceKind, FreeMount, OpeningMount
from wardwright.model.programme import Behaviour, Programme
from wardwright.model.site import Site
from wardwright.rules.at_the_opening import AT_OPENINGS
from wardwright.trials.watchers import has_sounder, heard_in

DETECTORS: tuple[DeviceKind, ...] = ("movement-detector", *AT_OPENINGS)
"""Kinds that notice an intruder."""
NO_MATTER_WHERE: tuple[DeviceKind, ...] = ("keypad", "keyfob", "sounder")
"""Kinds of devices that neither notice an intruder nor are gone for: a race hangs on that they are there only."""


Heard = tuple[tuple[Device, Behaviour], ...]
"""Detectors with how their zones behave."""


class Alarm(NamedTuple):
    """Detectors with how their zones behave, and what the control unit does with them."""

    heard: Heard
    """In the order of ids."""
    programme: Programme
    sounds: bool
    """Whether there is a sounder."""

    def with_detector(self, device: Device, behaviour: Behaviour) -> Alarm:
        """The same with one detector more."""
        heard = sorted([*self.heard, (device, behaviour)], key=lambda pair: pair[0].id)
        return self._replace(heard=tuple(heard))


@lru_cache(maxsize=64)
def without_abort_delay(programme: Programme) -> Programme:
    """A programme by which no message waits to be called off; one object for one programme."""
    return programme.model_copy(update={"abort_delay_s": 0.0})


@lru_cache(maxsize=64)
def alarm_of(site: Site, catalogue: Catalogue, part: str = "full") -> Alarm:
    """The alarm of a site with one part set.

    Parameters
    ----------
    site : Site
        The site.
    catalogue : Catalogue
        Sheets.
    part : str, default "full"
        What is set.

    Returns
    -------
    Alarm
        With the detectors that a zone of that part hears.
    """
    behaviours = heard_in(site, part)
    heard = tuple(
        (device, behaviours[device.id])
        for device in sorted(site.devices, key=lambda one: one.id)
        if device.id in behaviours and catalogue.sheet(device.sheet).kind in DETECTORS
    )
    return Alarm(heard, site.programme, has_sounder(site, catalogue))


@lru_cache(maxsize=64)
def as_met(site: Site, catalogue: Catalogue, *, but: tuple[DeviceKind, ...] = NO_MATTER_WHERE) -> Site:
    """The site as an intruder meets it: the same wherever a keypad or a sounder stands.

    Answers about an intruder are remembered by it, so that they outlive a move of such a device.

    Parameters
    ----------
    site : Site
        The site.
    catalogue : Catalogue
        Sheets.
    but : tuple of str, default NO_MATTER_WHERE
        The kinds of devices whose places do not matter.

    Returns
    -------
    Site
        With such devices all in one place; those on an opening are left as they are.
    """
    if not site.storeys:
        return site
    storey = site.storeys[0].id
    devices = tuple(
        _anywhere(one, storey)
        if catalogue.sheet(one.sheet).kind in but and not isinstance(one.mount, OpeningMount)
        else one
        for one in site.devices
    )
    return site.model_copy(update={"devices": devices})


@lru_cache(maxsize=64)
def detectors_alone(site: Site, catalogue: Catalogue) -> Site:
    """The site with no devices but its detectors; one object for equal ones.

    What hangs on detectors and zones only is remembered by it, and is found without comparing.
    """
    kept = tuple(one for one in site.devices if catalogue.sheet(one.sheet).kind in DETECTORS)
    return with_devices(site, kept)


@lru_cache(maxsize=128)
def with_devices(site: Site, devices: tuple[Device, ...]) -> Site:
    """The site with no other devices; one object for equal ones."""
    return _known(site.model_copy(update={"devices": devices}))


@lru_cache(maxsize=128)
def _known(site: Site) -> Site:
    return site


@lru_cache(maxsize=512)
def _anywhere(device: Device, storey: str) -> Device:
    """One object for one device, so that what is remembered by it is found without comparing."""
    return device.model_copy(update={"mount": FreeMount(storey=storey, at_m=(0.0, 0.0))})
