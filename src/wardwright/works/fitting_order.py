"""In which order a job is fitted: stage by stage, storeys together, ladder and steps work together."""

from __future__ import annotations

from typing import Literal, get_args

from wardwright.costing.tasks import Climb, climb_of, new_devices
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, DeviceKind
from wardwright.model.placement import standing
from wardwright.model.record import Id, Record
from wardwright.model.site import Site
from wardwright.rules.footings import is_in_the_open

FITTED_IN_ORDER: tuple[DeviceKind, ...] = (
    "control-unit", "router", "transmitter", "repeater", "sounder", "opening-contact", "shock-detector",
    "glass-break-detector", "movement-detector", "water-detector", "smoke-alarm", "heat-alarm", "co-alarm", "camera",
    "hold-up-button", "keyfob", "keypad",
)  # fmt: skip
"""Common practice: the control unit first, contacts before movement detectors, the keypad last."""
Stage = Literal[
    "walk the job", "control unit, in place for now", "hang for a try", "move the unit or add a repeater",
    "outside, in daylight", "cables", "contacts", "movement detectors", "others", "keypad", "close up",
]  # fmt: skip
"""Common practice, in this order."""
STAGES: tuple[Stage, ...] = get_args(Stage)[1:-1]
"""Those that have devices: all but the first and the last."""
FIXES_NOTHING: frozenset[Stage] = frozenset({"hang for a try", "cables"})
"""Stages that name devices which are fixed in another."""
CLIMBS: tuple[Climb, ...] = ("ladder", "steps", "hand")
AT_THE_UNIT: tuple[DeviceKind, ...] = ("control-unit", "router", "transmitter")
AT_OPENINGS: tuple[DeviceKind, ...] = ("opening-contact", "shock-detector", "glass-break-detector")
IN_THE_HAND: tuple[DeviceKind, ...] = ("keypad", "keyfob")
NEVER_TRIED: tuple[DeviceKind, ...] = (*AT_THE_UNIT, "keyfob")
"""Kinds that no signal is read for where they hang."""


class FittingStep(Record):
    """Some devices that are worked on together."""

    stage: Stage
    devices: tuple[Id, ...]
    """In order; empty: the stage is about the whole job."""
    climb: Climb = "hand"


def fitting_order(site: Site, catalogue: Catalogue) -> tuple[FittingStep, ...]:
    """Put what is to be fitted in order.

    Parameters
    ----------
    site : Site
        The house and its devices; those that were there before are not fitted.
    catalogue : Catalogue
        Says what each device is.

    Returns
    -------
    tuple of FittingStep
        Empty where nothing is to be fitted. Within a stage ladders first, outside while it is light; then steps, then
        the rest, from the lowest storey up.
    """
    devices = new_devices(site)
    if not devices:
        return ()
    kinds = {one.id: catalogue.sheet(one.sheet).kind for one in devices}
    links = {one.id: catalogue.sheet(one.sheet).link for one in devices}
    heights = {storey.id: storey.elevation_m for storey in site.storeys}

    def ordered(some: list[Device]) -> list[Device]:
        return sorted(
            some,
            key=lambda one: (
                kinds[one.id] == "keypad",
                CLIMBS.index(climb_of(site, one)),
                heights[standing(site, one).storey],
                FITTED_IN_ORDER.index(kinds[one.id]),
                one.name,
                one.id,
            ),
        )

    found = [FittingStep(stage="walk the job", devices=())]
    by_stage: dict[Stage, list[Device]] = {}
    for device in devices:
        by_stage.setdefault(_stage(site, device, kinds[device.id]), []).append(device)
    tried = [one for one in devices if links[one.id] == "radio" and kinds[one.id] not in NEVER_TRIED]
    if tried:
        by_stage["hang for a try"] = tried
    wired = [one for one in devices if links[one.id] == "wired" and kinds[one.id] not in AT_THE_UNIT]
    if wired:
        by_stage["cables"] = wired
    for stage in STAGES:
        some = ordered(by_stage.get(stage, []))
        if stage in FIXES_NOTHING and some:
            found.append(FittingStep(stage=stage, devices=tuple(one.id for one in some)))
            continue
        for climb in CLIMBS:
            together = tuple(one.id for one in some if climb_of(site, one) == climb)
            if together:
                found.append(FittingStep(stage=stage, devices=together, climb=climb))
    return (*found, FittingStep(stage="close up", devices=()))


def _stage(site: Site, device: Device, kind: DeviceKind) -> Stage:
    if kind in AT_THE_UNIT:
        return "control unit, in place for now"
    if kind == "repeater":
        return "move the unit or add a repeater"
    if kind in IN_THE_HAND:
        return "keypad"
    if device.mount.on == "wall" and is_in_the_open(site, standing(site, device)):
        return "outside, in daylight"
    if kind in AT_OPENINGS:
        return "contacts"
    return "movement detectors" if kind == "movement-detector" else "others"
