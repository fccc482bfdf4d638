"""The pieces of work that a job is made of, each with the figures of the catalogue that say how long it takes."""

from __future__ import annotations

from functools import lru_cache
from typing import Literal

from wardwright.costing.cable_runs import cable_run_m
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, DeviceKind, FreeMount, Surface, WallMount
from wardwright.model.placement import standing
from wardwright.model.record import Id, Record
from wardwright.model.site import Site
from wardwright.rules.footings import footing_below, level_of_place

Phase = Literal["survey", "prepare", "fit", "prove", "hand over", "contingency"]
"""Of job.md's steps those that a price holds; travel stands apart."""
Climb = Literal["hand", "steps", "ladder"]
"""What one stands on: the floor, steps, a ladder."""
BY_HAND_M = 2.0
"""Up to here one works standing on the floor. [m] (assumption)"""
FROM_STEPS_M = 3.0
"""Up to here from steps, above it from a ladder. [m] (assumption)"""
DRILLED: dict[str, str] = {
    "plaster": "light", "plasterboard": "light", "timber": "light", "insulation": "light", "brick": "masonry",
    "lightweight-block": "masonry", "concrete": "hard", "stone": "hard", "screed": "hard", "steel": "metal",
    "foil": "light", "glass": "hard",
}  # fmt: skip
"""What a layer is to a drill."""
HARDEST_FIRST = ("hard", "metal", "masonry", "light")
BY_SURFACE: dict[Surface, str] = {"tile": "work-tile", "textured": "work-textured"}
PROVED = ("movement-detector", "opening-contact", "sounder")
"""Kinds whose test has a figure of its own."""
COLD_C = 10.0
"""No tape on a surface colder than this. [deg C] (common practice)"""


class Task(Record):
    """One piece of work."""

    phase: Phase
    figures: tuple[Id, ...]
    """Rows of the catalogue; their product, `times` over, is how long it takes. [min]"""
    times: float = 1.0
    device: Id | None = None
    """What it is for; None: for the job."""


def new_devices(site: Site) -> tuple[Device, ...]:
    """The devices that are to be fitted, in the order of their ids."""
    return tuple(sorted((one for one in site.devices if not one.is_existing), key=lambda one: one.id))


@lru_cache(maxsize=64)
def tasks_of(site: Site, catalogue: Catalogue) -> tuple[Task, ...]:
    """All the work of a job.

    Parameters
    ----------
    site : Site
        The house and its devices; those that were there before take no work.
    catalogue : Catalogue
        Sheets and constructions.

    Returns
    -------
    tuple of Task
        Device by device, then the job's own; empty where nothing is to be fitted.
    """
    devices = new_devices(site)
    if not devices:
        return ()
    fresh = {one.id for one in devices}
    zones = sum(1 for zone in site.zones if fresh.intersection(zone.devices))
    kinds = frozenset(catalogue.sheet(one.sheet).kind for one in devices)
    by_device = (task for device in devices for task in device_tasks(site, catalogue, device))
    return (*by_device, *_job_tasks(kinds, zones=zones))


@lru_cache(maxsize=64)
def _job_tasks(kinds: frozenset[DeviceKind], *, zones: int) -> tuple[Task, ...]:
    """What is done once, whatever the number of devices."""
    found = [
        Task(phase="survey", figures=("job-survey",)),
        Task(phase="prepare", figures=("job-prepare",)),
        Task(phase="fit", figures=("job-walk-round",)),
        Task(phase="fit", figures=("job-clear-up",)),
        Task(phase="hand over", figures=("job-hand-over",)),
    ]
    if "control-unit" in kinds:
        found.append(Task(phase="prepare", figures=("job-programme",)))
    if "transmitter" in kinds:
        found.append(Task(phase="prove", figures=("job-message",)))
    if zones:
        found.append(Task(phase="prepare", figures=("work-zone",), times=float(zones)))
    return tuple(found)


def device_tasks(site: Site, catalogue: Catalogue, device: Device) -> tuple[Task, ...]:
    """The work of fitting and proving one device.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        Sheets and constructions.
    device : Device
        It.

    Returns
    -------
    tuple of Task
        Fitting first.
    """
    sheet = catalogue.sheet(device.sheet)
    run = cable_run_m(site, catalogue, device) if sheet.link == "wired" else 0.0
    return _device_tasks(site.bare, catalogue, device, run_m=run)


@lru_cache(maxsize=1024)
def _device_tasks(
    house: Site, catalogue: Catalogue, device: Device, *, run_m: float | None
) -> tuple[Task, ...]:
    sheet = catalogue.sheet(device.sheet)
    usual = f"fit-{sheet.kind}"
    # A sheet's own time is taken with the range of its kind.
    times = 1.0 if sheet.fit_min is None else sheet.fit_min / catalogue.figure(usual).value
    found = [Task(phase="fit", figures=(usual,), times=times, device=device.id)]

    def add(phase: Phase, *figures: str, count: float = 1.0) -> None:
        found.append(Task(phase=phase, figures=figures, times=count, device=device.id))

    for figure in (*_climbing(house, device), *_fixing(house, catalogue, device)):
        add("contingency" if figure.startswith("allow-") else "fit", figure)
    if sheet.link == "radio" and sheet.kind != "control-unit":
        add("prepare", "work-enrol")
        if sheet.kind != "keyfob":
            add("fit", "work-signal")
    if sheet.link == "wired" and run_m is None:
        add("fit", "work-cable-per-m", "work-cable-run")
    elif sheet.link == "wired" and run_m:
        add("fit", "work-cable-per-m", "work-cable-detour", count=run_m)
    if sheet.power == "mains" and sheet.kind not in ("router", "transmitter"):
        add("fit", "work-connect-mains")
    add("prove", f"prove-{sheet.kind if sheet.kind in PROVED else 'other'}")
    return tuple(found)


def working_height(site: Site, device: Device) -> float | None:
    """How high a device is above what one stands on to fit it; None: it stands free, at hand. [m]"""
    if isinstance(device.mount, FreeMount):
        return None
    at = standing(site, device)
    return level_of_place(site, at) - footing_below(site, at).level_m


def climb_of(site: Site, device: Device) -> Climb:
    """What one stands on to fit a device."""
    height = working_height(site, device)
    if height is None or height <= BY_HAND_M:
        return "hand"
    return "steps" if height <= FROM_STEPS_M else "ladder"


def _climbing(site: Site, device: Device) -> tuple[str, ...]:
    climb = climb_of(site, device)
    return () if climb == "hand" else (f"work-{climb}",)


def _fixing(site: Site, catalogue: Catalogue, device: Device) -> tuple[str, ...]:
    if isinstance(device.mount, FreeMount):
        return ()
    fixing = device.fixing
    surface: Surface = "unknown" if fixing is None else fixing.surface
    found = [BY_SURFACE[surface]] if surface in BY_SURFACE else []
    if device.mount.on == "ceiling" and surface in ("unknown", "textured"):
        found.append("allow-old-coating")
    is_stuck = fixing is not None and fixing.by == "adhesive"
    if fixing is None:  # not decided: as the sheet names it first
        is_stuck = catalogue.sheet(device.sheet).fixings[:1] == ("adhesive",)
    if is_stuck:
        found = [one for one in found if one != "work-tile"]
        is_cold = fixing is not None and fixing.surface_c is not None and fixing.surface_c < COLD_C
        return (*found, "work-stick", *(("work-warm-cold-surface",) if is_cold else ()))
    return (*found, *_drilling(site, catalogue, device, surface=surface))


def _drilling(site: Site, catalogue: Catalogue, device: Device, *, surface: Surface) -> tuple[str, ...]:
    if device.mount.on == "opening":
        return ("work-drill-metal",) if surface in ("steel", "aluminium") else ("work-drill-light",)
    if isinstance(device.mount, WallMount):
        made = _layers(catalogue, site.wall(device.mount.wall).construction)
        if made:
            hardest = next(one for one in HARDEST_FIRST if one in made)
            return (f"work-drill-{hardest}",)
        return ("work-drill-unknown", "allow-hard-wall")
    return ("work-drill-light",)


def _layers(catalogue: Catalogue, construction: str) -> set[str]:
    row = next((one for one in catalogue.constructions if one.id == construction), None)
    return set() if row is None else {DRILLED[name] for name, _ in row.layers if name in DRILLED}
