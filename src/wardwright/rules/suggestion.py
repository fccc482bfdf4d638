"""Where a mend would put a device, to be drawn and named."""

from __future__ import annotations

from wardwright.model.placement import FACE_GAP_M, along, space_at
from wardwright.model.record import Point2
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.finding import Mend


def suggestions(site: Site, mends: tuple[Mend, ...]) -> tuple[Sketch, ...]:
    """A sketch of the new place of each mend that moves a device to a wall or ceiling, its room as the label.

    Parameters
    ----------
    site : Site
        The house.
    mends : tuple of Mend
        Cures; those that move nothing across the plan are passed over.

    Returns
    -------
    tuple of Sketch
        In the order of the mends.
    """
    found = []
    for mend in mends:
        values = dict(mend.values)
        if mend.action != "move-device" or "on" not in values:
            continue
        storey, point = _place(site, values)
        space = space_at(site, storey, point)
        label = "" if space is None else space.name
        found.append(Sketch(role="suggestion", storey=storey, points=(point,), label=label))
    return tuple(found)


def _place(site: Site, values: dict[str, str | float | int | bool]) -> tuple[str, Point2]:
    if values["on"] == "ceiling":
        return str(values["storey"]), (float(values["x_m"]), float(values["y_m"]))
    wall = site.wall(str(values["wall"]))
    off = (wall.thickness_m / 2 + FACE_GAP_M) * (1.0 if values["side"] == "left" else -1.0)
    return wall.storey, along(wall.line_m, float(values["offset_m"]), left_m=off)
