"""What a camera shows and sees, as rules and answers ask about it: remembered by the house and the camera alone."""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import BoolArray, FloatArray
from wardwright.model.camera_rows import CameraEdition, Task
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, WallMount
from wardwright.model.device_sheets import CameraSheet
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.physics.video.density import distance_of
from wardwright.physics.video.from_site import (
    Ground,
    Shown,
    ground_seen,
    is_inside,
    lens_of,
    rooms_seen,
    shown,
    windows_seen,
)
from wardwright.physics.video.projection import Lens
from wardwright.rules.camera_kit import PRIVATE_USES
from wardwright.rules.finding import Mend

FARTHEST_M = 25.0
"""Ground farther away is not asked about. [m] (assumption)"""
COUNTS_PX_M = 25.0
"""Ground that is shown less densely than this counts as not seen: nobody is made out there. [px/m] (assumption)"""
TILTS_DEG = (10.0, 20.0, 30.0, 40.0)
"""How far down a camera is tried. [deg] (assumption)"""
MOST_MASKED = 0.7
"""A mask that covers more of the picture is no cure. [-] (assumption)"""
COLUMNS = 6
"""Strips of the picture that a mask is made of. [-]"""


class View(NamedTuple):
    """What one camera shows and sees."""

    lens: Lens
    shown: tuple[Shown, ...]
    street_m2: float | None
    """None: no boundary is drawn. [m2]"""
    others_m2: float | None
    """Beyond the boundary, but no street. [m2]"""
    mask: tuple[tuple[float, float], ...]
    """Corners of what of the picture to cover, as shares of its width from the left and of its height from above;
    empty: nothing. [-]"""
    mask_share: float
    """Share of the picture that the mask covers. [-]"""
    own_share_masked: float
    """Share of our own ground in view that the mask covers as well. [-]"""
    windows: tuple[str, ...]
    private: tuple[str, ...]
    """Ids of private rooms that it sees into."""

    @property
    def beyond_m2(self) -> float | None:
        """All that it sees beyond the boundary. [m2]"""
        if self.street_m2 is None or self.others_m2 is None:
            return None
        return self.street_m2 + self.others_m2

    @property
    def is_mask_of_use(self) -> bool:
        """Whether a mask hides what is beyond the boundary and leaves most of the picture."""
        return bool(self.mask) and self.mask_share <= MOST_MASKED

    @property
    def deciding(self) -> Shown | None:
        """The place that matters most: the entry door that is shown best, else the door or gate that is."""
        if not self.shown:
            return None
        return max(self.shown, key=lambda one: (one.density > 0.0, one.named.is_entry, one.density))


def view_of(site: Site, device: Device, sheet: CameraSheet) -> View:
    """What a camera shows and sees.

    Parameters
    ----------
    site : Site
        The house and what stands outside.
    device : Device
        The camera.
    sheet : CameraSheet
        Its lens.

    Returns
    -------
    View
        Remembered by the house and the camera.
    """
    return _view(site.bare, device, sheet)


@lru_cache(maxsize=256)
def _view(house: Site, device: Device, sheet: CameraSheet) -> View:
    lens = lens_of(house, device, sheet)
    ground = None
    if not is_inside(house, device):
        reach = min(FARTHEST_M, float(distance_of(COUNTS_PX_M, lens.across, lens.angle)))
        ground = ground_seen(house, device, lens, reach=reach)
    mask, share, masked = _mask(ground)
    return View(
        lens,
        shown(house, device, lens),
        None if ground is None else ground.area_m2(ground.is_street),
        None if ground is None else ground.area_m2(ground.is_beyond & ~ground.is_street),
        mask,
        share,
        masked,
        windows_seen(house, device, lens),
        rooms_seen(house, device, lens, uses=PRIVATE_USES),
    )


def _mask(ground: Ground | None) -> tuple[tuple[tuple[float, float], ...], float, float]:
    """Corners of what to cover, strip by strip from above, and the share of our ground that goes with it."""
    if ground is None or not ground.is_beyond.any():
        return (), 0.0, 0.0
    across, down = ground.picture.across, ground.picture.down
    strip = np.clip((np.nan_to_num(across) * COLUMNS).astype(int), 0, COLUMNS - 1)
    edges = np.zeros(COLUMNS)
    for i in range(COLUMNS):
        there = ground.is_beyond & (strip == i) & (down <= 1.0)
        edges[i] = min(1.0, math.ceil(20.0 * float(down[there].max())) / 20.0) if there.any() else 0.0
    covered: BoolArray = down <= edges[strip]
    ours = ~ground.is_beyond & ground.picture.is_in
    share = float((covered & ours).sum() / ours.sum()) if ours.any() else 0.0
    return _outline(edges), float(edges.mean()), share


def _outline(edges: FloatArray) -> tuple[tuple[float, float], ...]:
    """From the upper left corner along the lower edge of the strips to the upper right one."""
    lower: list[tuple[float, float]] = []
    for i, edge in enumerate(edges.tolist()):
        lower += [(round(i / COLUMNS, 3), round(edge, 3)), (round((i + 1) / COLUMNS, 3), round(edge, 3))]
    kept = [
        one
        for i, one in enumerate(lower)
        if i in (0, len(lower) - 1) or not lower[i - 1][1] == one[1] == lower[i + 1][1]
    ]
    return ((0.0, 0.0), *kept, (1.0, 0.0))


def task_of(catalogue: Catalogue, edition: CameraEdition, density: float) -> Task | None:
    """The task that a density is enough for; None where it is enough for none. [px/m]"""
    return next((one for one in reversed(catalogue.tasks_of(edition)) if one.density_px_m <= density), None)


def face_task(catalogue: Catalogue, edition: CameraEdition) -> Task | None:
    """The task from which on somebody who is known is told apart by their face."""
    return next((one for one in catalogue.tasks_of(edition) if one.shows_a_face), None)


def variants(
    site: Site, catalogue: Catalogue, device: Device
) -> Iterator[tuple[str, tuple[tuple[str, str | float], ...], Device]]:
    """A camera turned down, hung lower, or of another lens: a mend's action and values, and the camera after it.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        The sheets to choose from.
    device : Device
        The camera.

    Yields
    ------
    tuple of (str, values, Device)
        The least change first.
    """
    now, heading = catalogue.sheet(device.sheet), standing(site, device).heading_deg
    for tilt in TILTS_DEG:
        if tilt > device.tilt_deg:
            turned = device.model_copy(update={"tilt_deg": tilt})
            yield "turn-device", (("heading_deg", heading), ("tilt_deg", tilt)), turned
    if isinstance(device.mount, WallMount) and now.camera is not None:
        lowest = now.camera.height_low_m
        if lowest < device.mount.height_m:
            mount = device.mount.model_copy(update={"height_m": lowest})
            yield "move-device", (("height_m", lowest),), device.model_copy(update={"mount": mount})
    for other in catalogue.sheets:
        if other.camera is None or other.id == now.id or other.is_outside != now.is_outside:
            continue
        yield "replace-device", (("sheet", other.id),), device.model_copy(update={"sheet": other.id})


def mask_mend(device: Device, view: View) -> Mend:
    """A mask over the picture, as data: a person puts it in."""
    corners = " ".join(f"{across:g},{down:g}" for across, down in view.mask)
    return Mend(action="other", subject=device.id, values=(("mask", corners),))


def steepest_face_deg(catalogue: Catalogue, pack: str) -> float:
    """How steeply a face may be looked down at before a hat hides it. [deg]"""
    return catalogue.limit("camera-down-angle", pack).value
