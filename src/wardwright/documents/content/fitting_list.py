"""The devices as one fits them: storey by storey, each with where it goes, how it is held and what to beware of."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from wardwright.documents.content.mends import cautions_of
from wardwright.documents.content.names import Names, names_of, toward
from wardwright.documents.content.quantities import quantity, sentence
from wardwright.documents.content.schedule import NOT_DECIDED, room_name, sheet_of
from wardwright.documents.drawing.devices import Tag, device_tags
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import CeilingMount, Device, FreeMount, OpeningMount, WallMount
from wardwright.model.placement import standing
from wardwright.model.record import Record
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend
from wardwright.works.fitting_order import FITTED_IN_ORDER


class StepLine(Record):
    """One device in a list of one of the later steps."""

    device: str
    tag: str
    """Its letters on the plan."""
    name: str
    kind: str
    room: str
    facts: tuple[str, ...]
    """Sentences, in the order in which one needs them."""
    cautions: tuple[str, ...]
    findings: tuple[str, ...]
    """What must be mended about it first: codes and messages."""
    answer: str
    """Key of the answer that draws what it is about; empty: none does."""


class StepStorey(Record):
    """The devices of one storey."""

    storey: str
    name: str
    devices: tuple[StepLine, ...]


def fitting_list(site: Site, catalogue: Catalogue, findings: Sequence[Finding]) -> tuple[StepStorey, ...]:
    """List the devices as one fits them.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue
        Says what each device is.
    findings : sequence of Finding
        What the rules said: a device with something that must be mended says so.

    Returns
    -------
    tuple of StepStorey
        From the lowest storey up, without those that have no device.
    """
    names, tags = names_of(site, catalogue), device_tags(site, catalogue)

    def line(device: Device) -> StepLine:
        return step_line(site, device, tag=tags[device.id]).model_copy(
            update={
                "facts": _facts(
                    site,
                    device,
                    names=names,
                    looks=tags[device.id].looks,
                    is_contact=is_contact(catalogue, device),
                ),
                "cautions": cautions_of(site, catalogue, (Mend(action="change-mount", subject=device.id),)),
                "findings": mended_first(findings, device),
            }
        )

    return by_storey(site, sorted(site.devices, key=lambda one: _turn(catalogue, one)), line)


def by_storey(
    site: Site, devices: Sequence[Device], line: Callable[[Device], StepLine]
) -> tuple[StepStorey, ...]:
    """Put devices together by storey, from the lowest up; rooms stay together where the order leaves it open."""
    on = {device.id: standing(site, device).storey for device in devices}
    found = (
        StepStorey(
            storey=storey.id,
            name=storey.name,
            devices=tuple(line(device) for device in devices if on[device.id] == storey.id),
        )
        for storey in sorted(site.storeys, key=lambda one: one.elevation_m)
    )
    return tuple(one for one in found if one.devices)


def step_line(site: Site, device: Device, *, tag: Tag) -> StepLine:
    """A device with its letters and its room, and nothing said of it yet."""
    return StepLine(
        device=device.id,
        tag=tag.text,
        name=device.name,
        kind=tag.words,
        room=room_name(site, device),
        facts=(),
        cautions=(),
        findings=(),
        answer="",
    )


def mended_first(findings: Sequence[Finding], device: Device) -> tuple[str, ...]:
    """What must be mended about a device before it is fitted: codes and messages."""
    return tuple(
        f"{one.code}: {sentence(one.message)}"
        for one in findings
        if one.subject == device.id and one.severity == "must mend" and not one.accepted
    )


def is_contact(catalogue: Catalogue, device: Device) -> bool:
    """Whether a device is an opening contact."""
    sheet = sheet_of(catalogue, device)
    return sheet is not None and sheet.kind == "opening-contact"


def _turn(catalogue: Catalogue, device: Device) -> tuple[int, str]:
    sheet = sheet_of(catalogue, device)
    turn = len(FITTED_IN_ORDER) if sheet is None else FITTED_IN_ORDER.index(sheet.kind)
    return turn, device.name


def _facts(site: Site, device: Device, *, names: Names, looks: bool, is_contact: bool) -> tuple[str, ...]:
    found = [*_place(site, device, names=names), *set_words(site, device, looks=looks, is_contact=is_contact)]
    if not isinstance(device.mount, FreeMount) or device.fixing is not None:
        found.append(_held(device))
    if device.is_existing:
        found.append("there already, and stays")
    return tuple(sentence(one) for one in found)


def set_words(site: Site, device: Device, *, looks: bool, is_contact: bool) -> tuple[str, ...]:
    """How a device is set up where it goes: the gap of a contact, where one looks; no full stops.

    Parameters
    ----------
    site : Site
        The house.
    device : Device
        One of its devices.
    looks : bool
        Whether it looks somewhere.
    is_contact : bool
        Whether it has a gap between its parts.

    Returns
    -------
    tuple of str
        Empty where there is nothing to set.
    """
    found = []
    if isinstance(device.mount, OpeningMount) and is_contact:
        gap = device.mount.gap_m
        told = NOT_DECIDED if gap is None else quantity(gap * 1000.0, "mm", 1.0)
        found.append(f"gap between its parts {told}")
    if looks:
        tilt = f", {quantity(device.tilt_deg, 'deg', 1.0)} down" if device.tilt_deg else ""
        found.append(f"looks {toward(standing(site, device).heading_deg)} on the plan{tilt}")
    return tuple(found)


def _place(site: Site, device: Device, *, names: Names) -> tuple[str, ...]:
    mount = device.mount
    high = quantity(standing(site, device).height_m, "m", 0.01)
    match mount:
        case OpeningMount():
            return (f"on {site.opening(mount.opening).name}, electronics on the {mount.electronics_on}",)
        case WallMount():
            where = names.wall_place(mount.wall, side=mount.side, offset_m=mount.offset_m)
            return where, f"its middle {high} above the floor"
        case CeilingMount():
            return (f"on the ceiling, {high} above the floor",)
    return (f"stands free, {high} above the floor" if mount.height_m else "stands on the floor",)


def _held(device: Device) -> str:
    fixing = device.fixing
    if fixing is None:
        return f"fixing {NOT_DECIDED}"
    surface = "a surface that is not known" if fixing.surface == "unknown" else fixing.surface
    return f"held by {fixing.by} on {surface}"
