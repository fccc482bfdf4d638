"""The fitter's job pack: what is dangerous, what is put in the van, and how each device is reached and held."""

from __future__ import annotations

from collections import Counter
from datetime import date

from wardwright.documents.content.fitting_list import fitting_list
from wardwright.documents.content.forms.slots import NO_CODES, with_slots
from wardwright.documents.content.paper import NOT_KNOWN, Cell, Column, Paper, Section, Table
from wardwright.documents.content.quantities import joined
from wardwright.documents.content.schedule import NOT_DECIDED, sheet_of
from wardwright.documents.content.wording import CAUTIONS
from wardwright.documents.drawing.devices import letters_of
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, FreeMount, OpeningMount
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.placement import standing
from wardwright.model.site import Site

REACH_M, STEPS_M = 1.9, 3.0
"""What is worked on from the floor, and from steps indoors. [m] (common practice)"""
TOOLS = (
    "Laser distance meter, torch, compass, spirit level",
    "Pipe, cable and stud finder, checked on a known cable",
    "Drill with small and long bits, vacuum, dust sheets",
    "Steps; ladder with stand-off and something to foot it",
    "Signal reader, sound level meter, multimeter, watch",
    "Gap gauge; testers for glass, smoke and heat, where there are such",
    "Wipes of alcohol and water, tacky strip, foam tape, screws and plugs",
    "Label sheet, printed; this pack, the plan, the programming sheet and the tests",
    "Ear and eye protection, gloves, first-aid box",
)
AGREED = (
    "Day, from when to when; who is at home",
    "Parking, way in with a ladder",
    "Furniture to be moved, by whom",
    "Mains off: when, who may do it",
    "Painting or plastering: done by",
    "Children and pets kept away from the work",
)
CLEANING = (
    "Clean before tape, press hard, and let it rest before hard use. Not on cold, freshly painted, dusty or silk "
    "surfaces. Screws for whatever must tell of its removal, for whatever looks, and for what is heavy."
)
HANG_FIRST = (
    "Hang every device with tacky strip first and read its radio with all doors shut, before any hole is drilled.",
)


def job_pack(site: Site, catalogue: Catalogue, *, drawn_up: date) -> Paper:
    """Put together what one takes along.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        Says what each device is and runs on.
    drawn_up : date
        The day the paper is made.

    Returns
    -------
    Paper
        Site risks first; devices that stay from before are not picked.
    """
    return Paper(
        title="Job pack",
        house=site.name,
        copy="fitter",
        drawn_up=drawn_up,
        foot="Risks first, then what goes in the van, then where it goes. " + NO_CODES,
        sections=(
            Section("Site risks", table=_risks(site, catalogue), points=CAUTIONS[:5]),
            Section("Agreed with the customer", blanks=AGREED),
            Section("Pick list", table=pick_list(site, catalogue), is_form=True),
            Section("Cells and fixings", table=_small_things(site, catalogue)),
            Section(
                "Tools",
                table=Table("Tools", (Column("What"),), tuple((one,) for one in TOOLS), is_ticked=True),
            ),
            Section(
                "Drilling and ladders, in the order of fitting",
                text=(CLEANING, *HANG_FIRST),
                table=_drilling(site, catalogue),
                is_form=True,
            ),
        ),
        is_landscape=True,
    )


def pick_list(site: Site, catalogue: Catalogue) -> Table:
    """One row for each device sheet, counted; what stays from before is left at home."""
    columns = (
        Column("Device sheet", share=2.6),
        Column("Kind", share=1.6),
        Column("How many", share=0.7),
        Column("Power", share=0.8),
        Column("Cells", share=2.0),
        Column("For", share=3.4),
    )
    fresh = [one for one in site.devices if not one.is_existing]
    by_sheet: dict[str, list[Device]] = {}
    for device in fresh:
        by_sheet.setdefault(device.sheet, []).append(device)
    rows: list[tuple[Cell, ...]] = []
    for sheet_id, devices in sorted(by_sheet.items()):
        sheet = sheet_of(catalogue, devices[0])
        rows.append(
            (
                sheet_id if sheet is None else sheet.name,
                NOT_KNOWN if sheet is None else letters_of(sheet)[1],
                len(devices),
                NOT_KNOWN if sheet is None else sheet.power,
                _cells_words(catalogue, sheet),
                joined([device.name for device in devices]),
            )
        )
    return Table("Pick list", columns, tuple(rows), is_ticked=True)


def _cells_words(catalogue: Catalogue, sheet: DeviceSheet | None) -> str:
    if sheet is None or (sheet.power == "cell" and sheet.cells is None):
        return NOT_KNOWN
    if sheet.cells is not None:
        return f"{sheet.cells.count} \u00d7 {catalogue.cell(sheet.cells.cell).name}"
    return "none" if sheet.standby is None else catalogue.cell(sheet.standby.battery).name


def _small_things(site: Site, catalogue: Catalogue) -> Table:
    """Cells by kind, and how many devices are held in which way."""
    counted: Counter[tuple[str, str]] = Counter()
    for device in site.devices:
        sheet = sheet_of(catalogue, device)
        if device.is_existing or sheet is None:
            continue
        if sheet.cells is not None:
            counted["cells", catalogue.cell(device.cell or sheet.cells.cell).name] += sheet.cells.count
        if device.fixing is not None or not isinstance(device.mount, FreeMount):
            by = NOT_DECIDED if device.fixing is None else device.fixing.by
            counted["devices to fix", by] += 1
    rows = tuple((what, which, count) for (what, which), count in sorted(counted.items()))
    columns = (Column("What"), Column("Which", share=2.0), Column("How many", share=0.7))
    return Table("Cells and fixings", columns, rows, is_ticked=True)


def _ladder(site: Site, catalogue: Catalogue, device: Device) -> str:
    sheet = sheet_of(catalogue, device)
    if sheet is not None and sheet.is_outside:
        return "ladder outside" if standing(site, device).height_m > REACH_M else "from the ground"
    if isinstance(device.mount, OpeningMount):
        return "from the floor, or steps"
    high = standing(site, device).height_m
    return "from the floor" if high <= REACH_M else "steps" if high <= STEPS_M else "ladder or platform"


def _drilling(site: Site, catalogue: Catalogue) -> Table:
    known = (
        Column("On plan", share=0.6), Column("Device", share=1.6), Column("Where and how", share=3.6),
        Column("Reached by", share=1.0),
    )  # fmt: skip
    slots = (Column("Services found", share=1.1), Column("Depth, bit", share=0.9), Column("Done"))
    rows = [
        (line.tag, line.name, " ".join(line.facts), _ladder(site, catalogue, site.device(line.device)))
        for storey in fitting_list(site, catalogue, ())
        for line in storey.devices
    ]
    return with_slots("Drilling and ladders", known, rows, slots=slots)


def _risks(site: Site, catalogue: Catalogue) -> Table:
    """What is known of each risk; that nothing is known is said so, and is no all-clear."""
    fresh = [one for one in site.devices if not one.is_existing]

    def named(chosen: list[Device]) -> str:
        return joined([one.name for one in chosen]) or "none known"

    textured = [one for one in fresh if one.fixing is not None and one.fixing.surface == "textured"]
    unknown = [one for one in fresh if one.fixing is None or one.fixing.surface == "unknown"]
    ladders = [one for one in fresh if _ladder(site, catalogue, one).startswith(("ladder", "steps"))]
    mains = [
        one for one in fresh if (sheet := sheet_of(catalogue, one)) is not None and sheet.power == "mains"
    ]
    coating = named(textured)
    if unknown:
        coating += f"; surface not known: {len(unknown)} of {len(fresh)} devices"
    rows = (
        ("Height: ladders and steps", named(ladders)),
        ("Mains, for a competent electrician", named(mains)),
        ("Old coatings that may hold asbestos", coating),
        ("Cables and pipes in the wall", "not known before the finder has been over it"),
        ("Animals", joined([one.name for one in site.pets]) or "none told"),
        ("Working alone, heat, lofts", "not known"),
    )
    known = (Column("Risk", share=1.8), Column("Where, as far as known", share=3.4))
    return with_slots("Site risks", known, rows, slots=(Column("What is done about it", share=3.0),))
