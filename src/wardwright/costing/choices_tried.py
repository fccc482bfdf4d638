"""Which choice moves the work: each device fixed otherwise, on the plan, and what that would save."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from functools import lru_cache
from types import MappingProxyType
from typing import NamedTuple

from wardwright.costing.labour import minutes_of
from wardwright.costing.tasks import (
    BY_HAND_M,
    FROM_STEPS_M,
    Task,
    device_tasks,
    new_devices,
    working_height,
)
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, DeviceKind, Fixing, FreeMount, WallMount
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.rules.cameras.outside_camera_within_reach import outside_camera_within_reach
from wardwright.rules.finding import Mend
from wardwright.rules.fixing import FIXING_RULES
from wardwright.rules.movement.movement_detector_height_outside_its_sheet import (
    movement_detector_height_outside_its_sheet,
)
from wardwright.rules.registry import Rule, faults_of
from wardwright.rules.sounders.outside_sounder_within_reach import outside_sounder_within_reach
from wardwright.rules.sounders.sounder_within_quick_reach import sounder_within_quick_reach
from wardwright.trials.draws import Input, cases_of, estimate_of

ON_TAPE: tuple[Rule, ...] = FIXING_RULES
"""What a device on tape may fall foul of: these look at it and the house alone."""
LOWER: Mapping[DeviceKind, tuple[Rule, ...]] = MappingProxyType(
    {
        "camera": (outside_camera_within_reach,),
        "movement-detector": (movement_detector_height_outside_its_sheet,),
        "sounder": (outside_sounder_within_reach,),
    }
)
"""What a device that hangs lower may fall foul of, by its kind: all these look at it and the house alone."""
LOWER_AMONG_OTHERS: Mapping[DeviceKind, tuple[Rule, ...]] = MappingProxyType(
    {"sounder": (sounder_within_quick_reach,)}
)
"""What else, where other devices and the way in count too."""
UNIT = "min of work"
HAIR_M = 0.01
"""So far below a limit a device is tried, that it does not hang on rounding. [m]"""


class Choice(NamedTuple):
    """One device fixed otherwise."""

    mend: Mend
    """Its gain is the work that it saves."""
    broken: tuple[str, ...]
    """Codes of the rules that it would then break, and does not now."""


def choices_for(site: Site, catalogue: Catalogue) -> tuple[Choice, ...]:
    """Try each new device lower, on tape, or without a cable.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        Sheets and times.

    Returns
    -------
    tuple of Choice
        What saves most first; what saves nothing is left out.
    """
    found = [one for device in new_devices(site) for one in _choices(site, catalogue, device)]
    return tuple(
        sorted(
            found,
            key=lambda one: (
                -(one.mend.gain.value if one.mend.gain else 0.0),
                one.mend.subject,
                one.mend.values,
            ),
        )
    )


def _choices(site: Site, catalogue: Catalogue, device: Device) -> Iterator[Choice]:
    now = device_tasks(site, catalogue, device)
    for action, values, other in _tried(site.bare, catalogue, device):
        # Whatever becomes of the device itself, its cable runs to the control unit that there is now.
        saved = _saved(catalogue, now, device_tasks(site, catalogue, other))
        if saved.value > 0.0:
            mend = Mend(action=action, subject=device.id, values=values, gain=saved)
            broken = _new_faults(site, catalogue, device, other=other, is_taped=action == "change-device")
            yield Choice(mend, tuple(sorted(broken)))


Values = tuple[tuple[str, str | float | int | bool], ...]


@lru_cache(maxsize=512)
def _tried(house: Site, catalogue: Catalogue, device: Device) -> tuple[tuple[str, Values, Device], ...]:
    return tuple(_ways(house, catalogue, device))


def _ways(site: Site, catalogue: Catalogue, device: Device) -> Iterator[tuple[str, Values, Device]]:
    sheet = catalogue.sheet(device.sheet)
    height = working_height(site, device)
    if isinstance(device.mount, WallMount) and height is not None:
        for limit in (FROM_STEPS_M, BY_HAND_M):
            lower = round(device.mount.height_m - (height - limit) - HAIR_M, 2)
            if height > limit and lower > 0.0:
                mount = device.mount.model_copy(update={"height_m": lower})
                yield "change-mount", (("height_m", lower),), device.model_copy(update={"mount": mount})
    is_screwed = device.fixing is None or device.fixing.by == "screws"
    if is_screwed and "adhesive" in sheet.fixings and not isinstance(device.mount, FreeMount):
        surface = "unknown" if device.fixing is None else device.fixing.surface
        fixing = Fixing(by="adhesive", surface=surface)
        yield "change-device", (("by", "adhesive"),), device.model_copy(update={"fixing": fixing})
    if sheet.link == "wired":
        rows = [
            one
            for one in catalogue.sheets
            if one.kind == sheet.kind
            and one.link == "radio"
            and (not one.mounts or device.mount.on in one.mounts)
        ]
        if rows:
            ident = min(rows, key=lambda one: one.cheapest_first).id
            yield "replace-device", (("sheet", ident),), device.model_copy(update={"sheet": ident})


@lru_cache(maxsize=512)
def _saved(catalogue: Catalogue, now: tuple[Task, ...], then: tuple[Task, ...]) -> Estimate:
    """What other tasks save; those that both have fall away; remembered: most devices stay as they are. [min]"""
    gone, come = [one for one in now if one not in then], [one for one in then if one not in now]
    names = sorted({figure for task in (*gone, *come) for figure in task.figures})
    cases = cases_of(tuple(Input.of(catalogue.figure(one)) for one in names))
    less = sum(
        (minutes_of(task, cases) for task in gone),
        minutes_of(Task(phase="fit", figures=(), times=0.0), cases),
    )
    return estimate_of(less - sum(minutes_of(task, cases) for task in come), cases, unit=UNIT)


def _new_faults(
    site: Site, catalogue: Catalogue, device: Device, *, other: Device, is_taped: bool
) -> frozenset[str]:
    """Codes of the rules that a device breaks in another form, and does not as it is."""
    found = _broken_alone(site.bare, catalogue, other, is_taped=is_taped)
    if found:
        found -= _broken_alone(site.bare, catalogue, device, is_taped=is_taped)
    rules = () if is_taped else LOWER_AMONG_OTHERS.get(catalogue.sheet(device.sheet).kind, ())
    if not rules:
        return found
    devices = tuple(other if one.id == device.id else one for one in site.devices)
    after = site.model_copy(update={"devices": devices})
    among = _broken(after, catalogue, rules, subject=device.id)
    return found | (among - _broken(site, catalogue, rules, subject=device.id) if among else among)


@lru_cache(maxsize=512)
def _broken_alone(house: Site, catalogue: Catalogue, device: Device, *, is_taped: bool) -> frozenset[str]:
    """Codes of the rules that look at a device and the house alone: remembered while others move."""
    rules = ON_TAPE if is_taped else LOWER.get(catalogue.sheet(device.sheet).kind, ())
    alone = house.model_copy(update={"devices": (device,)})
    return _broken(alone, catalogue, rules, subject=device.id)


def _broken(site: Site, catalogue: Catalogue, rules: tuple[Rule, ...], *, subject: str) -> frozenset[str]:
    """Codes of the rules that find a fault of one device."""
    return frozenset(
        one.code for rule in rules for one in faults_of(rule, site, catalogue) if one.subject == subject
    )
