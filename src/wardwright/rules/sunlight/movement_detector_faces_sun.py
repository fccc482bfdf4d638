"""SUN101: the sun shines straight on a movement detector's lens."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import movement_detectors
from wardwright.rules.lit_panes import line_to_pane
from wardwright.rules.out_of_the_sun import out_of_the_sun
from wardwright.rules.registry import rule
from wardwright.rules.strong_lights import rooflight
from wardwright.rules.suggestion import suggestions
from wardwright.rules.sun_on_detectors import LENS_LIMIT_MIN, sun_on


@rule(
    code="SUN101",
    name="movement-detector-faces-sun",
    since="0.1",
    stage="trial use",
    mark="assumption",
    severity="advise",
    sources=("own",),
    follows="nothing",
)
def movement_detector_faces_sun(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Movement detectors that the sun shines straight into, through a pane that nothing covers.

    What it checks
        For each movement detector, the minutes in a year of clear sky when the sun, through an uncovered pane of its
        storey, shines straight on its lens from within its fan: past the reveal, walls, shut doors and furniture, the
        floor above, and what is drawn outside. More than 10 minutes are named. Where north is not told, all norths
        are tried and the worst counts.
    Why it matters
        Direct sun is some fifty times what lenses are tried with. It warms the filter or leaks through it, comes and
        goes with each cloud, and reads like somebody passing: at the same clock hour, some weeks of the year, and
        never when somebody comes to look for it.
    How to put it right
        Take the height, turn or place given, which the sun does not reach: often it is enough to hang it higher than
        the head of the window. Or fit a blind, and draw it whenever the alarm is set.
    What it cannot know
        Trees, hills, and buildings and roofs that are not drawn; light thrown on by cars, water and polished floors;
        whether a curtain that is drawn before the pane, as told, is really drawn.

    Parameters
    ----------
    site : Site
        The house, its place, its panes and devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each detector, with the minutes of sun straight on its lens in a year [min].

    Raises
    ------
    NotComputable
        If there is no movement detector, or the latitude is not known.
    """
    for device, sheet in movement_detectors(site, catalogue):
        sun = sun_on(site, catalogue, device)
        if sun.lens.value <= LENS_LIMIT_MIN:
            continue
        # A rooflight straight ahead is named as strong light already.
        overhead = rooflight(site, device, sheet)
        named = None if overhead is None else overhead.opening.id
        panes = tuple(beam.opening for beam in sun.on_lens if not beam.is_covered and beam.opening != named)
        if not panes:
            continue
        mends = out_of_the_sun(site, catalogue, device, sheet=sheet, sun=sun)
        new = suggestions(site, mends)
        place, opening = standing(site, device), site.opening(panes[0])
        through = " and ".join(site.opening(one).name for one in panes)
        unknown = "" if sun.is_north_known else "; north not known: worst of all norths"
        yield movement_detector_faces_sun.finding(
            device.id,
            f"{device.name}: the sun shines straight on it through {through}{unknown}",
            cure=_cure(mends, is_moved=bool(new)),
            estimate=sun.lens,
            limit=LENS_LIMIT_MIN,
            mends=mends,
            sketches=(line_to_pane(site, place, opening), *new),
            related=panes,
        )


def _cure(mends: tuple[Mend, ...], *, is_moved: bool) -> str:
    if is_moved:
        return "Move it to the place given"
    if mends[0].action == "turn-device":
        return "Turn it to the direction given"
    if mends[0].action == "change-mount":
        return "Hang it at the height given"
    return "Put a blind on that pane, drawn whenever the alarm is set"
