"""Where mends would put things: their places as sketches for the plan."""

from __future__ import annotations

from collections.abc import Iterable

from wardwright.documents.drawing.devices import device_tags, letters_of
from wardwright.errors import CatalogueError
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import WallMount
from wardwright.model.placement import FACE_GAP_M, along
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.finding import Mend

Place = tuple[str, Point2]
"""A storey and a point of its plan. [m]"""


def suggestions(
    mends: Iterable[Mend], site: Site, catalogue: Catalogue, *, at_most: int
) -> tuple[Sketch, ...]:
    """Sketch the places of mends that add or move a device; of two at one place the first.

    Parameters
    ----------
    mends : iterable of Mend
        The better ones first.
    site : Site
        The house they are for.
    catalogue : Catalogue
        Says what would be added.
    at_most : int
        How many places are sketched, so that a plan stays clear. [-]

    Returns
    -------
    tuple of Sketch
        Each labelled with the letters of its device. Mends without a place have none.
    """
    found: dict[Place, Sketch] = {}
    for mend in mends:
        letters = _letters(mend, site, catalogue)
        place = _place(mend, site)
        if letters is None or place is None or place in found:
            continue
        storey, point = place
        found[place] = Sketch(role="suggestion", storey=storey, points=(point,), label=f"{letters} here")
    return tuple(found.values())[:at_most]


def _letters(mend: Mend, site: Site, catalogue: Catalogue) -> str | None:
    if mend.action == "move-device":
        tag = device_tags(site, catalogue).get(mend.subject)
        return None if tag is None else tag.text
    sheet_id = dict(mend.values).get("sheet")
    if mend.action != "add-device" or not isinstance(sheet_id, str):
        return None
    try:
        return letters_of(catalogue.sheet(sheet_id))[0]
    except CatalogueError:
        return None


def _place(mend: Mend, site: Site) -> Place | None:
    """The place that a mend's values, its opening or its power point give."""
    values = dict(mend.values)
    near = next((outlet for outlet in site.outlets if outlet.id == values.get("near")), None)
    if "offset_m" in values:
        return _on_wall(mend, site)
    if near is not None:
        return near.storey, near.at_m
    opening = next((one for one in site.openings if one.id == mend.subject), None)
    if mend.action == "add-device" and opening is not None:
        wall = site.wall(opening.wall)
        return wall.storey, along(wall.line_m, opening.offset_m)
    return None


def _on_wall(mend: Mend, site: Site) -> Place | None:
    values = dict(mend.values)
    wall_id, side = values.get("wall"), values.get("side")
    if wall_id is None:  # moved along the wall it is on
        device = next((one for one in site.devices if one.id == mend.subject), None)
        if device is None or not isinstance(device.mount, WallMount):
            return None
        wall_id, side = device.mount.wall, device.mount.side
    wall = next((one for one in site.walls if one.id == wall_id), None)
    if wall is None:
        return None
    left = (1.0 if side == "left" else -1.0) * (wall.thickness_m / 2 + FACE_GAP_M)
    return wall.storey, along(wall.line_m, float(values["offset_m"]), left_m=left)
