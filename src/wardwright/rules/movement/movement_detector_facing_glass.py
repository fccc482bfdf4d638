"""MOV103: a movement detector aimed at a window or a glazed door."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.placement import along, standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.detector_spots import (
    LOOKS_ALL_ROUND_DEG,
    half_centre_deg,
    moved_to_better_spot,
    turned_away,
)
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.glass_ahead import view_from
from wardwright.rules.kit import movement_detectors
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.suggestion import suggestions


@rule(
    code="MOV103",
    name="movement-detector-facing-glass",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
    mends_apart=True,
)
def movement_detector_facing_glass(
    site: Site, catalogue: Catalogue, *, is_mended: bool = True
) -> Iterator[Finding]:
    """Movement detectors whose fan is aimed at glass to the outside.

    What it checks
        For each movement detector with an axis, whether the middle third of its fan meets glass of a window or door
        to the open air, within its reach, past no wall or shut door. Glass behind a shutter is left out.
    Why it matters
        The pane itself warms and cools with sun, cloud and headlights, and sun through it sweeps floor and furniture
        in view. Both look like somebody moving, and come back at the same clock hours.
    How to put it right
        Turn it by the angle given, so that it looks along the glass or away from it, or move it to the window's own
        wall or a corner beside it. The finding carries the smallest turn, or else the nearest such place.
    What it cannot know
        Whether the sun reaches this pane at all, what headlights pass, and how high the glass is against the fan;
        curtains that are always drawn; glass that the drawing does not show as glass.

    Parameters
    ----------
    site : Site
        The house, its openings and devices.
    catalogue : Catalogue
        The devices' sheets.
    is_mended : bool, default True
        Whether another direction or place is looked for.

    Yields
    ------
    Finding
        One for each detector that faces glass, with the angle between its axis and the nearest glass it sees, held
        against half of the middle third of its fan [deg].

    Raises
    ------
    NotComputable
        If there is no movement detector.
    """
    for device, sheet in movement_detectors(site, catalogue):
        yield from _about(site.bare, device, sheet, is_mended=is_mended)


@lru_cache(maxsize=128)
def _about(site: Site, device: Device, sheet: MovementSheet, *, is_mended: bool) -> tuple[Finding, ...]:
    """What is found about one detector, remembered while others move."""
    if sheet.angle_deg >= LOOKS_ALL_ROUND_DEG:
        return ()
    place = standing(site, device)
    eye = (place.x_m, place.y_m)
    half = half_centre_deg(sheet)
    panes = view_from(site, place.storey, eye).panes(place.heading_deg, half_deg=half, reach_m=sheet.reach_m)
    if not panes:
        return ()
    opening = site.opening(panes[0].opening)
    pane = along(site.wall(opening.wall).line_m, opening.offset_m)
    at_fault = Sketch(role="fault", storey=place.storey, points=(eye, pane), label=opening.name)
    found = movement_detector_facing_glass.finding(
        device.id,
        f"{device.name}: it is aimed at the glass of {opening.name}",
        cure="",
        estimate=exactly(
            panes[0].off_axis_deg, "deg", weakest(device.basis_of("mount"), opening.basis_of("glazing"))
        ),
        limit=half,
        sketches=(at_fault,),
        related=tuple(one.opening for one in panes),
    )
    if not is_mended:
        return (found,)
    mends = turned_away(site, device, sheet) or moved_to_better_spot(site, device, sheet)
    new = suggestions(site, mends)
    cured = {"cure": _cure(mends, new), "mends": mends, "sketches": (at_fault, *new)}
    return (found.model_copy(update=cured),)


def _cure(mends: tuple[Mend, ...], new: tuple[Sketch, ...]) -> str:
    if new:
        return f"Move it to the place given, in {new[0].label}"
    if mends:
        return "Turn it to the direction given"
    return "Cover the glass, or watch this room from another: no place in it looks past its glass"
