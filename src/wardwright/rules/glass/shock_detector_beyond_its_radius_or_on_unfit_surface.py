"""GLS105: a shock detector that does not feel all of its frame, or is on a surface that it is not for."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, WallMount
from wardwright.model.device_sheets import ShockSheet
from wardwright.model.opening import Opening
from wardwright.model.placement import space_at, standing
from wardwright.model.site import Site
from wardwright.rules.felt_blows import farthest_corner_m, from_wall_m, guarded_opening, shock_table
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import some_of
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.wall_spots import wall_spots


@rule(
    code="GLS105",
    name="shock-detector-beyond-its-radius-or-on-unfit-surface",
    since="0.1",
    stage="trial use",
    mark="derived",  # the limit is the device's own sheet
    severity="must mend",
    sources=(),
)
def shock_detector_beyond_its_radius_or_on_unfit_surface(
    site: Site, catalogue: Catalogue
) -> Iterator[Finding]:
    """Shock detectors too far from the corners of what they guard, or on a surface that their sheet leaves out.

    What it checks
        On a door or window: from the best place that there can be, the middle of the longer side of the frame or of
        the leaf itself, to the farthest corner, against the radius on the sheet. On a wall: from where it is to the
        farthest corner of the nearest way in of that wall. And what it is fixed to, against its sheet's surfaces.
    Why it matters
        A blow dies out along the frame, and at once at a joint. Beyond the radius the corner is levered open unfelt;
        on a soft or hollow surface the detector feels little, or everything.
    How to put it right
        Move it along the wall to the place given, use one with a larger radius, or add a second at the far side.
    What it cannot know
        Where on the frame it sits; joints in frame, leaf or masonry; how the household's own doors shake it. Set its
        sensitivity on site, with blows at the farthest corner.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each such detector, with the distance to the farthest corner and the radius [m] where that is what
        fails; one of severity `not run` where its sheet names surfaces and nobody told what it is fixed to.

    Raises
    ------
    NotComputable
        If there is no shock detector.
    """
    this = shock_detector_beyond_its_radius_or_on_unfit_surface
    for device, row in some_of(site, catalogue, "shock-detector"):
        sheet = shock_table(row)
        guarded = guarded_opening(site, device)
        distance = None if guarded is None else farthest_corner_m(device, guarded)
        surface = "unknown" if device.fixing is None else device.fixing.surface
        if guarded is not None and distance is not None and distance > sheet.radius_m:
            yield this.finding(
                device.id,
                f"{device.name}: the farthest corner of {guarded.name} is beyond its radius",
                cure="Move it to the place given, use one with a larger radius, or add a second",
                estimate=exactly(
                    distance, "m", weakest(device.basis_of("mount"), guarded.basis_of("width_m"))
                ),
                limit=sheet.radius_m,
                mends=_moved(site, device, guarded, sheet=sheet)
                or _wider(catalogue, device, sheet=sheet, distance=distance),
                related=(guarded.id,),
            )
        elif sheet.surfaces and surface == "unknown":
            yield this.not_run(
                device.id,
                f"{device.name}: nobody told what it is fixed to",
                cure="Tell the surface: its sheet names those that it is for",
                mends=(Mend(action="tell", subject=device.id, values=(("field", "fixing"),)),),
            )
        elif sheet.surfaces and surface not in sheet.surfaces:
            yield this.finding(
                device.id,
                f"{device.name}: it is fixed to {surface}, and its sheet is for {', '.join(sheet.surfaces)}",
                cure="Fix it to one of these, or use a detector whose sheet is for this surface",
                mends=_for_surface(catalogue, device, sheet=sheet, surface=surface),
            )


def _moved(site: Site, device: Device, guarded: Opening, *, sheet: ShockSheet) -> tuple[Mend, ...]:
    """The nearest place on its own wall, level with the middle of the opening, from which it feels all of it."""
    mount = device.mount
    if not isinstance(mount, WallMount):
        return ()
    place = standing(site, device)
    space = space_at(site, place.storey, (place.x_m, place.y_m))
    height = (guarded.sill_m + guarded.head_m) / 2
    spots = () if space is None else wall_spots(site, space, height_m=height)
    fit = [
        (round(abs(spot.offset_m - mount.offset_m), 6), spot)
        for spot in spots
        if (spot.wall, spot.side) == (mount.wall, mount.side)
        and from_wall_m(guarded, spot.offset_m, height) <= sheet.radius_m
    ]
    if not fit:
        return ()
    return (Mend(action="move-device", subject=device.id, values=min(fit)[1].values(height)),)


def _wider(catalogue: Catalogue, device: Device, *, sheet: ShockSheet, distance: float) -> tuple[Mend, ...]:
    """A sheet with a radius that is large enough, for the same surfaces."""
    found = sorted(
        (row.shock.radius_m, row.id)
        for row in catalogue.sheets
        if row.shock is not None
        and row.shock.radius_m >= distance
        and (not row.shock.surfaces or set(sheet.surfaces) <= set(row.shock.surfaces))
    )
    return tuple(
        Mend(action="replace-device", subject=device.id, values=(("sheet", name),)) for *_, name in found[:1]
    )


def _for_surface(
    catalogue: Catalogue, device: Device, *, sheet: ShockSheet, surface: str
) -> tuple[Mend, ...]:
    """A sheet that names the surface, with a radius as large."""
    found = sorted(
        row.cheapest_first
        for row in catalogue.sheets
        if row.shock is not None and surface in row.shock.surfaces and row.shock.radius_m >= sheet.radius_m
    )
    return tuple(
        Mend(action="replace-device", subject=device.id, values=(("sheet", name),)) for *_, name in found[:1]
    )
