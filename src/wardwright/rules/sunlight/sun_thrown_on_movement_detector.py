"""SUN103: a glossy floor or a mirror throws the sun on a movement detector."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from wardwright.model.catalogue import Catalogue
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.physics.sunlight.from_site import year_of
from wardwright.rules.finding import Finding
from wardwright.rules.kit import movement_detectors
from wardwright.rules.lit_panes import blinds_on, line_to_pane
from wardwright.rules.registry import exactly, rule
from wardwright.rules.sun_on_detectors import LENS_LIMIT_MIN, sun_on
from wardwright.rules.sun_thrown import THROWN_LIMIT_MIN, thrown_on


@rule(
    code="SUN103",
    name="sun-thrown-on-movement-detector",
    since="0.1",
    stage="trial use",
    mark="assumption",
    severity="advise",
    sources=("own",),
    follows="nothing",
)
def sun_thrown_on_movement_detector(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Movement detectors on which a glossy floor or a mirror throws the sun.

    What it checks
        For each movement detector, the minutes in a year of clear sky when the sun, through an uncovered pane, is
        seen from its lens in a glossy floor or a mirror that lies in its view. More than 60 minutes are named,
        unless the sun is found straight on its lens (movement-detector-faces-sun).
    Why it matters
        Polished stone and mirrors throw the sun on almost whole: to the lens it is as if it looked into the sun from
        below or from the side, where nobody looks for it.
    How to put it right
        Draw a blind on that pane whenever the alarm is set, lay a mat where the bright spot lies, or hang the mirror
        elsewhere.
    What it cannot know
        Floors and mirrors that are not told as such; furniture that stands in the way of the thrown light; how well
        a floor is polished; cars and water outside.

    Parameters
    ----------
    site : Site
        The house, its place, its panes, floors, mirrors and devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each detector, with the minutes of thrown sun on its lens in a year [min].

    Raises
    ------
    NotComputable
        If there is no movement detector, or the latitude is not known.
    """
    for device, _ in movement_detectors(site, catalogue):
        thrown = thrown_on(site, catalogue, device)
        if not thrown or sun_on(site, catalogue, device).lens.value > LENS_LIMIT_MIN:
            continue
        steps = np.unique(np.concatenate([beam.steps for _, beam in thrown]))
        minutes = len(steps) * year_of(site).step_min
        if minutes <= THROWN_LIMIT_MIN:
            continue
        panes = tuple(dict.fromkeys(beam.opening for _, beam in thrown))
        things = tuple(dict.fromkeys(thing.name for thing, _ in thrown))
        place, opening = standing(site, device), site.opening(panes[0])
        yield sun_thrown_on_movement_detector.finding(
            device.id,
            f"{device.name}: the sun through {opening.name} is thrown on it by {' and '.join(things)}",
            cure="Put a blind on that pane, drawn whenever the alarm is set",
            estimate=exactly(minutes, "min", "default"),
            limit=THROWN_LIMIT_MIN,
            mends=blinds_on(panes),
            sketches=(line_to_pane(site, place, opening),),
            related=panes,
        )
