"""SUN102: sunlit floor in a movement detector's view for many hours of the year."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.physics.sunlight.shine import Beam
from wardwright.rules.detector_spots import LOOKS_ALL_ROUND_DEG, half_centre_deg
from wardwright.rules.finding import Finding
from wardwright.rules.glass_ahead import view_from
from wardwright.rules.kit import movement_detectors
from wardwright.rules.lit_panes import blinds_on, line_to_pane
from wardwright.rules.registry import rule
from wardwright.rules.sun_on_detectors import LENS_LIMIT_MIN, VIEW_LIMIT_MIN, sun_on


@rule(
    code="SUN102",
    name="sun-patch-crosses-its-view",
    since="0.1",
    stage="trial use",
    mark="assumption",
    severity="advise",
    sources=("own",),
    follows="nothing",
)
def sun_patch_crosses_its_view(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Movement detectors that watch floor on which the sun lies for more than 1500 hours a year.

    What it checks
        For each movement detector, the minutes in a year of clear sky when the sun, through an uncovered pane, lies
        on floor or low furniture where it senses. More than 1500 hours are named, unless the sun is found straight
        on its lens (movement-detector-faces-sun) or it is aimed at that glass (movement-detector-facing-glass).
    Why it matters
        A sunlit patch is warm. When a cloud passes it cools in seconds, inside the time that such detectors listen
        for; together with a draught or a moving curtain it can read like somebody walking.
    How to put it right
        Draw a blind on that pane whenever the alarm is set; or watch this room from the window's own wall.
    What it cannot know
        How strongly this floor warms, and how the detector tells a patch from a person: most take it without a false
        alarm. Furniture that shades the floor; trees and hills.

    Parameters
    ----------
    site : Site
        The house, its place, its panes and devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each detector, with the minutes of sun on floor in its view in a year [min].

    Raises
    ------
    NotComputable
        If there is no movement detector, or the latitude is not known.
    """
    for device, sheet in movement_detectors(site, catalogue):
        sun = sun_on(site, catalogue, device)
        if sun.view is None or sun.view.value <= VIEW_LIMIT_MIN or sun.lens.value > LENS_LIMIT_MIN:
            continue
        place = standing(site, device)
        beams = [beam for beam in sun.in_view if not beam.is_covered]
        told = _told_elsewhere(site, sheet, at=(place.storey, (place.x_m, place.y_m), place.heading_deg))
        beams = [beam for beam in beams if beam.opening not in told]
        if not beams:
            continue
        worst: Beam = max(beams, key=lambda beam: (len(beam.steps), beam.opening))
        opening = site.opening(worst.opening)
        unknown = "" if sun.is_north_known else "; north not known: worst of all norths"
        yield sun_patch_crosses_its_view.finding(
            device.id,
            f"{device.name}: the sun through {opening.name} lies on floor that it watches{unknown}",
            cure="Put a blind on that pane, drawn whenever the alarm is set",
            estimate=sun.view,
            limit=VIEW_LIMIT_MIN,
            mends=blinds_on(beam.opening for beam in beams),
            sketches=(line_to_pane(site, place, opening),),
            related=tuple(beam.opening for beam in beams),
        )


def _told_elsewhere(
    site: Site, sheet: MovementSheet, *, at: tuple[str, tuple[float, float], float]
) -> frozenset[str]:
    """Panes that the detector is aimed at, which another rule names already."""
    if sheet.angle_deg >= LOOKS_ALL_ROUND_DEG:
        return frozenset()
    storey, eye, heading = at
    panes = view_from(site, storey, eye).panes(
        heading, half_deg=half_centre_deg(sheet), reach_m=sheet.reach_m
    )
    return frozenset(pane.opening for pane in panes)
