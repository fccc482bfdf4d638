"""The plan for fitting: a sheet a storey, with every device, its height and how it is held."""

from __future__ import annotations

import math
from datetime import date

from wardwright.documents.content.names import toward
from wardwright.documents.content.paper import BESIDE_MM, Paper, PaperSize, Section
from wardwright.documents.content.plans import rising_plans
from wardwright.documents.content.quantities import quantity
from wardwright.documents.drawing.devices import device_tags
from wardwright.documents.drawing.plan import BasePlan, plan_with
from wardwright.documents.drawing.sheet import WHOLE, Room, Sheet, sheet_for
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount
from wardwright.model.placement import standing
from wardwright.model.site import Site

ROOM_MM: dict[PaperSize, tuple[float, float]] = {"a4": (222.0, 135.0), "letter": (214.0, 141.0)}
"""What heading and foot of a page leave for a drawing and its key together, upright and across. [mm]"""
WIDE_MM: dict[PaperSize, tuple[float, float]] = {"a4": (180.0, 267.0), "letter": (180.0, 249.0)}
"""Between the margins, upright and across. [mm]"""
EDGE_MM = 2.0
"""Kept free beside a drawing as wide as the page. [mm]"""
LETTERS_MM, BETWEEN_MM = 11.0, 5.0
"""For a device's letters in the key, and between what stands side by side. [mm]"""
LETTER_MM, LINE_MM, GAP_MM = 1.55, 3.3, 2.2
"""Of the key: a letter's width on average, a line, and between devices. [mm]"""
READ_AT = (
    "Print at 100 %: a metre of the house is {mm:g} mm on the paper. Heights are to the middle of a device. Where no "
    "fixing stands, it is not decided."
)


def plan_sheets(site: Site, catalogue: Catalogue, *, drawn_up: date, size: PaperSize = "a4") -> Paper:
    """Draw every storey on a sheet of its own, all at one scale.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue
        Says what each device is.
    drawn_up : date
        The day the paper is made.
    size : str, default "a4"
        Of the page, which decides the scale.

    Returns
    -------
    Paper
        Storeys from the lowest up.
    """
    keys = _keys(site, catalogue)
    upright, across = (_sheet(site, keys, size=size, is_landscape=turned) for turned in (False, True))
    sheet = across if across.scale < upright.scale else upright
    bases = rising_plans(site, catalogue, sheet=sheet)
    return Paper(
        title=f"Plan, 1:{sheet.scale}",
        house=site.name,
        copy="fitter",
        drawn_up=drawn_up,
        sections=tuple(_section(base, keys[base.storey]) for base in bases),
        foot=READ_AT.format(mm=sheet.mm_per_m),
        is_landscape=sheet is across,
    )


def _sheet(
    site: Site, keys: dict[str, tuple[tuple[str, str], ...]], *, size: PaperSize, is_landscape: bool
) -> Sheet:
    """The largest scale at which every storey fits a page: with its key beside it, below it or overleaf."""
    room_mm, wide_mm, beside_mm = (
        ROOM_MM[size][is_landscape],
        WIDE_MM[size][is_landscape],
        BESIDE_MM[is_landscape],
    )
    half = (wide_mm - BETWEEN_MM) / 2
    below = max((_key_mm(key, wide_mm=half) for key in keys.values()), default=0.0) / 2 + LINE_MM
    above = sheet_for(
        site, room=Room(wide_mm - EDGE_MM, min(room_mm - below, WHOLE.height_mm), WHOLE.round_mm)
    )
    beside = sheet_for(site, room=Room(beside_mm, room_mm, WHOLE.round_mm))
    rest = wide_mm - BETWEEN_MM - beside.width_mm
    fits = all(_key_mm(key, wide_mm=rest) <= room_mm for key in keys.values())
    found = beside if beside.scale < above.scale and fits else above
    # Twice the scale is worth a second page for the rest of a long key.
    alone = sheet_for(site, room=Room(wide_mm - EDGE_MM, min(room_mm, WHOLE.height_mm), WHOLE.round_mm))
    return alone if alone.scale < found.scale else found


def _key_mm(key: tuple[tuple[str, str], ...], *, wide_mm: float) -> float:
    """About how high a key is in one column. [mm]"""
    fitting = max((wide_mm - LETTERS_MM) / LETTER_MM, 1.0)
    return sum(math.ceil(len(words) / fitting) * LINE_MM + GAP_MM for _, words in key)


def _keys(site: Site, catalogue: Catalogue) -> dict[str, tuple[tuple[str, str], ...]]:
    """The devices of each storey, by their letters."""
    tags = device_tags(site, catalogue)
    found: dict[str, list[tuple[str, str]]] = {storey.id: [] for storey in site.storeys}
    for device in site.devices:
        tag = tags[device.id]
        found[standing(site, device).storey].append((tag.text, _words(site, device, looks=tag.looks)))
    return {storey: tuple(key) for storey, key in found.items()}


def _section(base: BasePlan, key: tuple[tuple[str, str], ...]) -> Section:
    drawing = plan_with(
        base,
        (),
        key=f"fitting-{base.storey}",
        title=f"{base.name}: devices",
        description=f"Plan of {base.name} at 1:{base.sheet.scale} with its devices.",
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
    held += [] if fixing is None else [fixing.by]
    return f"{number}{device.name}: {', '.join(held)}"
