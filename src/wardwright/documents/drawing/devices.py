"""Devices on the plan: plain abbreviations of the trade in small boxes, with a tick where they look."""

from __future__ import annotations

import math
from collections import Counter
from typing import NamedTuple

from wardwright.documents.drawing.inks import box_size_mm
from wardwright.documents.drawing.labels import Board
from wardwright.documents.drawing.recording import Recorder
from wardwright.errors import CatalogueError
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, DeviceKind, OpeningMount
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.placement import Standing, sides_of_opening, standing
from wardwright.model.record import Point2
from wardwright.model.site import Site

ABBREVIATIONS: dict[DeviceKind, tuple[str, str]] = {
    "control-unit": ("CU", "control unit"),
    "keypad": ("KP", "keypad"),
    "keyfob": ("KF", "keyfob"),
    "movement-detector": ("MD", "movement detector"),
    "opening-contact": ("OC", "opening contact"),
    "shock-detector": ("SD", "shock detector"),
    "glass-break-detector": ("GB", "glass-break detector"),
    "water-detector": ("WD", "water detector"),
    "hold-up-button": ("HB", "hold-up button"),
    "smoke-alarm": ("SA", "smoke alarm"),
    "heat-alarm": ("HA", "heat alarm"),
    "co-alarm": ("CO", "CO alarm"),
    "sounder": ("SI", "sounder, inside"),
    "camera": ("CI", "camera, inside"),
    "repeater": ("RP", "repeater"),
    "transmitter": ("TX", "transmitter"),
    "router": ("RT", "router"),
}
"""Letters and words for each kind of device; outside, a sounder is SO and a camera CX."""


LOOKING = frozenset({"MD", "CI", "CX"})
"""Letters of the kinds of which it matters where they look."""
LOOK_MM = 3.4
"""Length of the stroke that shows where a device looks. [mm]"""


class Tag(NamedTuple):
    """How a device is called on the plan."""

    device: str
    text: str
    words: str
    looks: bool
    """Whether where it looks matters."""


def device_tags(site: Site, catalogue: Catalogue) -> dict[str, Tag]:
    """Name every device for the plan: letters for its kind, and a number where there are several.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        Says what each device is.

    Returns
    -------
    dict of Tag
        By device id, in the site's order.
    """
    kinds = {device.id: _kind(device, catalogue) for device in site.devices}
    total, seen = Counter(letters for letters, _ in kinds.values()), Counter[str]()
    tags: dict[str, Tag] = {}
    for device_id, (letters, words) in kinds.items():
        seen[letters] += 1
        text = f"{letters}{seen[letters]}" if total[letters] > 1 else letters
        tags[device_id] = Tag(device_id, text, words, letters in LOOKING)
    return tags


def _kind(device: Device, catalogue: Catalogue) -> tuple[str, str]:
    try:
        sheet = catalogue.sheet(device.sheet)
    except CatalogueError:
        return "?", "device without a sheet"
    return letters_of(sheet)


def letters_of(sheet: DeviceSheet) -> tuple[str, str]:
    """Letters and words for what a sheet describes."""
    if sheet.sounder is not None and sheet.sounder.is_outside:
        return "SO", "sounder, outside"
    if sheet.camera is not None and sheet.camera.is_outside:
        return "CX", "camera, outside"
    return ABBREVIATIONS[sheet.kind]


def take_place(board: Board, stand: Standing, tag: Tag, *, mm_per_m: float) -> None:
    """Note the places of a device's dot and of the stroke where it looks, before anything is named."""
    board.take((stand.x_m, stand.y_m), (2.0, 2.0))
    if tag.looks:
        board.take(_looked_at(stand, unit=1.0 / mm_per_m), (2.6, 2.6))


def _looked_at(stand: Standing, *, unit: float) -> Point2:
    turn = math.radians(stand.heading_deg)
    return (stand.x_m + LOOK_MM * unit * math.cos(turn), stand.y_m + LOOK_MM * unit * math.sin(turn))


def draw_device(
    recorder: Recorder, site: Site, device: Device, *, tag: Tag, board: Board, mm_per_m: float
) -> None:
    """Draw a device: a dot in its place, a stroke where it looks, its letters close by."""
    stand = standing(site, device)
    at: Point2 = (stand.x_m, stand.y_m)
    unit = 1.0 / mm_per_m
    toward = _away(site, device, stand.heading_deg)
    if tag.looks:
        far = _looked_at(stand, unit=unit)
        recorder.line("device-look", at, far)
        recorder.tick("device-look", far, turn_deg=stand.heading_deg + 90.0, length_mm=2.2)
        toward = stand.heading_deg + 90.0
    is_goal = tag.text.startswith("CU")
    if is_goal:  # walks end at it: its letters keep out of their way
        toward = stand.heading_deg + 90.0
    recorder.circle("device-dot", at, radius_mm=0.75)
    size = box_size_mm("device", tag.text)
    clear = 3.4 if is_goal else 2.0
    centre = board.place(at, size, clear_mm=clear, toward_deg=_square(toward), is_apart=True)
    edge = _edge(centre, at, (size[0] / 2 * unit, size[1] / 2 * unit))
    if math.dist(edge, at) > 1.2 * unit:
        recorder.line("leader", at, edge)
    recorder.box("device", centre, tag.text)


def _away(site: Site, device: Device, heading_deg: float) -> float:
    """The direction in which the letters are tried first: off the face, or out of the house."""
    if not isinstance(device.mount, OpeningMount):
        return heading_deg
    opening = site.opening(device.mount.opening)
    (ax, ay), (bx, by) = site.wall(opening.wall).line_m
    left_side, right_side = sides_of_opening(site, opening)
    turn = -90.0 if right_side is None and left_side is not None else 90.0
    return math.degrees(math.atan2(by - ay, bx - ax)) + turn


def _square(angle_deg: float) -> float:
    """The nearest quarter turn."""
    return round(angle_deg / 90.0) * 90.0


def _edge(centre: Point2, toward: Point2, half: tuple[float, float]) -> Point2:
    """Where the line from a box's middle to a point leaves the box."""
    dx, dy = toward[0] - centre[0], toward[1] - centre[1]
    share = min(
        half[0] / abs(dx) if abs(dx) > 1e-9 else math.inf,
        half[1] / abs(dy) if abs(dy) > 1e-9 else math.inf,
        1.0,
    )
    return (centre[0] + dx * share, centre[1] + dy * share)
