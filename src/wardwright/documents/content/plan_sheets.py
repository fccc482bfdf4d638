"""The plan for fitting: a sheet a storey, with every device, its height and how it is held."""

from __future__ import annotations

import math
from datetime import date

from wardwright.documents.content.names import toward
from wardwright.documents.content.paper import BESIDE_MM, Paper, Section
from wardwright.documents.content.quantities import quantity
from wardwright.documents.drawing.devices import device_tags
from wardwright.documents.drawing.plan import BasePlan, base_plan, plan_with
from wardwright.documents.drawing.sheet import WHOLE, Room, sheet_for
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount
from wardwright.model.placement import standing
from wardwright.model.site import Site

ROOM_MM = 224.0
"""What heading and foot of an A4 page leave for a drawing and its key together. [mm]"""
KEY_BESIDE_MM = 12.5
"""Of a device in a key that stands beside the drawing, in four lines at most. [mm]"""
KEY_LINE_MM = 8.4
"""Of two devices side by side in the key, each in two lines. [mm]"""
READ_AT = (
    "Print at 100 %: a metre of the house is {mm:g} mm on the paper. Heights are to the middle of a device."
)


def plan_sheets(site: Site, catalogue: Catalogue, *, drawn_up: date) -> Paper:
    """Draw every storey on a sheet of its own, all at one scale.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue
        Says what each device is.
    drawn_up : date
        The day the paper is made.

    Returns
    -------
    Paper
        Storeys from the lowest up.
    """
    storeys = sorted(site.storeys, key=lambda storey: storey.elevation_m)
    counts = [sum(standing(site, one).storey == storey.id for one in site.devices) for storey in storeys]
    high = ROOM_MM - math.ceil(max(counts) / 2) * KEY_LINE_MM
    above = sheet_for(site, room=Room(WHOLE.width_mm, min(high, WHOLE.height_mm), WHOLE.round_mm))
    beside = sheet_for(site, room=Room(BESIDE_MM, ROOM_MM, WHOLE.round_mm))
    is_long = max(counts) * KEY_BESIDE_MM > ROOM_MM
    sheet = beside if beside.scale < above.scale and not is_long else above
    bases = [base_plan(site, catalogue, storey_id=storey.id, sheet=sheet) for storey in storeys]
    return Paper(
        title=f"Plan, 1:{sheet.scale}",
        house=site.name,
        copy="fitter",
        drawn_up=drawn_up,
        sections=tuple(_section(site, catalogue, base) for base in bases),
        foot=READ_AT.format(mm=sheet.mm_per_m),
    )


def _section(site: Site, catalogue: Catalogue, base: BasePlan) -> Section:
    tags = device_tags(site, catalogue)
    drawing = plan_with(
        base,
        (),
        key=f"fitting-{base.storey}",
        title=f"{base.name}: devices",
        description=f"Plan of {base.name} at 1:{base.sheet.scale} with its devices.",
    )
    key = tuple(
        (tags[one].text, _words(site, site.device(one), looks=tags[one].looks)) for one in base.devices
    )
    return Section(base.name, drawing=drawing, key=key, text=() if key else ("No devices on this storey.",))


def _words(site: Site, device: Device, *, looks: bool) -> str:
    """A device's zone and name, how high it is and how it is held."""
    zone = next((one for one in site.zones if device.id in one.devices), None)
    number = "" if zone is None else f"{zone.number}  "
    at = standing(site, device)
    if isinstance(device.mount, OpeningMount):
        gap = device.mount.gap_m
        held = [f"on {site.opening(device.mount.opening).name}"]
        held += [] if gap is None else [f"gap {quantity(gap * 1000.0, 'mm', 1.0)}"]
    else:
        held = [f"{at.height_m:.2f} m"]
        held += [f"looks {toward(at.heading_deg)}"] if looks else []
    fixing = device.fixing
    held += ["fixing not decided"] if fixing is None else [fixing.by]
    return f"{number}{device.name}: {', '.join(held)}"
