"""GLS104: a large fixed pane that nothing listens to or feels."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import OpeningMount, WallMount
from wardwright.model.opening import Opening
from wardwright.model.placement import is_way_in
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import devices_of
from wardwright.rules.limits import cited, limit_for, severity_of
from wardwright.rules.panes_in_earshot import HEIGHT_M, ears, hears, nearest_hearing_spot, panes_of
from wardwright.rules.registry import exactly, rule, weakest

REACHED_M = 3.0
"""A sill above the ground outside no higher than this is got at without a ladder. [m] (assumption)"""


@rule(
    code="GLS104",
    name="large-fixed-pane-without-detection",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def large_fixed_pane_without_detection(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Large panes that do not open, within reach from the ground, without a glass-break or shock detector.

    What it checks
        For each fixed pane to the outside of 1 m2 or more whose lower edge is within 3 m of the ground: whether a
        glass-break detector of its room hears it, or a shock detector is on it or on its wall.
    Why it matters
        A pane that does not open has no contact to tell of it, and a large one is as good as a door once it is out.
        A movement detector in the room notices whoever has come through, not the breaking.
    How to put it right
        Fit an acoustic glass-break detector at the place given, or a shock detector on the frame.
    What it cannot know
        Glass that is hard to break through; what climbs to it from a roof or a wall; where people are in the room all
        day, a movement detector may be enough.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets, and how large a pane has to be.

    Yields
    ------
    Finding
        One for each such pane, with its area and the area from which it counts [m2]; one of severity `not run` that
        names such windows of which nobody told how they open.

    Raises
    ------
    NotComputable
        If no pane to the outside is drawn.
    """
    this = large_fixed_pane_without_detection
    least = limit_for(catalogue, "large-fixed-pane", site)
    panes = [
        one
        for one in sorted(site.openings, key=lambda one: one.id)
        if one.glazing is not None and one.kind != "rooflight" and is_way_in(site, one)
    ]
    if not panes:
        raise NotComputable("no pane to the outside is drawn", cure="Add the windows and glazed doors")
    large = [
        one
        for one in panes
        if _area_m2(one) >= least.value
        and above_ground_m(site, one) <= REACHED_M
        and not _is_watched(site, catalogue, one)
    ]
    untold = [one.name for one in large if one.basis_of("hinge") == "default" and one.kind == "window"]
    if untold:
        yield this.not_run(
            site.name,
            f"Nobody told whether {' or '.join(untold)} opens",
            cure="Tell where each window turns or slides, or that it is fixed",
        )
    for pane in (one for one in large if one.hinge == "fixed"):
        area = _area_m2(pane)
        mends = _added(site, catalogue, pane)
        yield this.finding(
            pane.id,
            f"{pane.name}: a fixed pane of {area:.1f} m2 within reach, and nothing listens to it or feels it",
            cure=(
                "Fit a glass-break detector at the place given"
                if mends
                else "Fit a shock detector on its frame"
            )
            + f" ({cited(catalogue, least)})",
            severity=severity_of(least),
            estimate=exactly(area, "m2", weakest(pane.basis_of("width_m"), pane.basis_of("head_m"))),
            limit=least.value,
            mends=mends,
        )


def _area_m2(pane: Opening) -> float:
    return pane.width_m * (pane.head_m - pane.sill_m)


def above_ground_m(site: Site, pane: Opening) -> float:
    """The lower edge of a pane above the ground outside. [m]"""
    if pane.sill_outside_m is not None:
        return pane.sill_outside_m
    storey = site.storey(site.wall(pane.wall).storey)
    return storey.elevation_m + pane.sill_m - site.ground.level_m


def _is_watched(site: Site, catalogue: Catalogue, pane: Opening) -> bool:
    for device, _ in devices_of(site, catalogue, "shock-detector"):
        mount = device.mount
        if isinstance(mount, OpeningMount) and mount.opening == pane.id:
            return True
        if isinstance(mount, WallMount) and mount.wall == pane.wall:
            return True
    if not devices_of(site, catalogue, "glass-break-detector"):
        return False
    return any(
        pane in panes_of(site, ear.room) and hears(site, ear.storey, ear.point, opening=pane, sheet=ear.sheet)
        for ear in ears(site, catalogue)
    )


def _added(site: Site, catalogue: Catalogue, pane: Opening) -> tuple[Mend, ...]:
    """A glass-break detector in the pane's room from where it hears the pane; empty if there is no such place."""
    rows = (row for row in catalogue.sheets if row.glass_break is not None)
    for row in sorted(rows, key=lambda one: one.cheapest_first):
        glasses = row.glass_break.glazings if row.glass_break is not None else ()
        if glasses and pane.glazing not in glasses:
            continue
        spot = nearest_hearing_spot(site, row, pane)
        if spot is not None:
            values = (("sheet", row.id), *spot.values(HEIGHT_M))
            return (Mend(action="add-device", subject=spot.space, values=values),)
    return ()
