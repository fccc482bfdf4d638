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
from wardwright.rules.registry import Rule, findings_of
from wardwright.rules.sounders.outside_sounder_within_reach import outside_sounder_within_reach
from wardwright.rules.sounders.sounder_within_quick_reach import sounder_within_quick_reach
from wardwright.trials.draws import Input, cases_of, estimate_of

ON_TAPE: tuple[Rule, ...] = FIXING_RULES
"""What a device on tape may fall foul of."""
LOWER: Mapping[DeviceKind, tuple[Rule, ...]] = MappingProxyType(
    {
        "camera": (outside_camera_within_reach,),
        "movement-detector": (movement_detector_height_outside_its_sheet,),
        "sounder": (outside_sounder_within_reach, sounder_within_quick_reach),
    }
)
"""What a device that hangs lower may fall foul of, by its kind."""
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
    found = []
    for device in new_devices(site):
        for action, values, other in _tried(site, catalogue, device):
            after = site.model_copy(
                update={"devices": tuple(other if one.id == device.id else one for one in site.devices)}
            )
            saved = _saved(
                catalogue, device_tasks(site, catalogue, device), device_tasks(after, catalogue, other)
            )
            if saved.value <= 0.0:
                continue
            mend = Mend(action=action, subject=device.id, values=values, gain=saved)
            kind = catalogue.sheet(device.sheet).kind
            rules = ON_TAPE if action == "change-device" else LOWER.get(kind, ())
            broken = _broken(after, catalogue, rules, subject=device.id)
            if broken:
                broken -= _broken(site, catalogue, rules, subject=device.id)
            found.append(Choice(mend, tuple(sorted(broken))))
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


Values = tuple[tuple[str, str | float | int | bool], ...]


def _tried(site: Site, catalogue: Catalogue, device: Device) -> Iterator[tuple[str, Values, Device]]:
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


def _broken(site: Site, catalogue: Catalogue, rules: tuple[Rule, ...], *, subject: str) -> set[str]:
    """Codes of the rules that find a fault of one device."""
    return {
        one.code
        for rule in rules
        for one in findings_of(rule, site, catalogue)
        if one.subject == subject and one.severity != "not run"
    }
