"""The plan of fitting in words: stages, where each device goes, how it is held, and how far it may be moved."""

from __future__ import annotations

from wardwright.costing.tasks import Climb
from wardwright.documents.content.names import Names, names_of
from wardwright.documents.content.paper import NOT_KNOWN, Cell, Column, Table
from wardwright.documents.content.quantities import quantity
from wardwright.documents.content.question_words import QUESTION_SHORT
from wardwright.documents.content.schedule import NONE, NOT_DECIDED, OUTSIDE
from wardwright.documents.content.wording import DANGERS
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.fit_plan import FitPlan
from wardwright.questions.room_to_move import Leeway, RoomToMove
from wardwright.works.fitting_order import FIXES_NOTHING, FittingStep, Stage
from wardwright.works.fixing_sheet import FixingSheet

STAGES: dict[Stage, str] = {
    "walk the job": "Walk the job with the customer: which doors are used; photograph every wall first",
    "control unit, in place for now": "Control unit in place for now, with power, network and message path",
    "hang for a try": "Hang each radio device with tacky strip, all doors shut, and read its signal before any hole",
    "move the unit or add a repeater": "Move the control unit now if a reading is thin, or hang the repeater",
    "outside, in daylight": "Outside, in daylight and dry",
    "cables": "Run the cables: low voltage apart from mains, slack left, both ends labelled",
    "contacts": "Contacts, shock and glass-break detectors",
    "movement detectors": "Movement detectors: last height and angle by walk test",
    "others": "Smoke, heat, CO and water devices, cameras inside, sounders inside, buttons",
    "keypad": "Keyfobs, and the keypad last: it fixes the entry time",
    "close up": "Springs, lids, seals on every cable hole; then the tests",
}
CLIMBS: dict[Climb, str] = {"hand": "from the floor", "steps": "from steps", "ladder": "from a ladder"}
DRILLED = {
    "light": "plasterboard or timber: hollow fixings", "masonry": "brick or block: plugs",
    "hard": "concrete or stone: hammer drill, long plugs", "metal": "steel: mind what it is coated with",
    "unknown": "a wall of unknown make: try a small hole first",
}  # fmt: skip
COLUMNS = (
    Column("Turn"), Column("Stage", share=2.0), Column("Device", share=2.0), Column("Room", share=1.4),
    Column("From", share=1.2), Column("From the corner", "m"), Column("Height", "m"), Column("Climb"),
    Column("Held by"), Column("Surface"), Column("Drilled"), Column("Least surface temperature", "deg C"),
    Column("Least age of paint", "d"), Column("Work", "min"), Column("Left", "cm"), Column("Right", "cm"),
    Column("Up", "cm"), Column("Down", "cm"), Column("Turned left", "deg"), Column("Turned right", "deg"),
    Column("Beware", share=3.0),
)  # fmt: skip
WAYS = ("left", "right", "up", "down", "turned left", "turned right")
NOT_TRIED = "not tried"
HOW_TRIED = (
    "How far a device may go was tried on the model, up to 40 cm and 20 degrees: nothing that is met now fails, and "
    "no rule finds what must be mended. What fails already does not count. Each way was tried alone: test after it."
)


def stage_words(step: FittingStep) -> str:
    """What a step is about, and what one stands on."""
    words = STAGES[step.stage]
    return words if step.climb == "hand" else f"{words}; {CLIMBS[step.climb]}"


def sheet_words(sheet: FixingSheet, names: Names) -> tuple[str, ...]:
    """One device's fixing and what to beware of, a sentence each without a full stop."""
    return (*fixing_words(sheet, names), *(DANGERS[one].removesuffix(".") for one in sheet.dangers))


def fixing_words(sheet: FixingSheet, names: Names) -> tuple[str, ...]:
    """One device's fixing, a sentence each without a full stop.

    Parameters
    ----------
    sheet : FixingSheet
        As data.
    names : Names
        What people call things.

    Returns
    -------
    tuple of str
        Where, how high, and how it is held.
    """
    room = OUTSIDE if sheet.space is None else names.of(sheet.space)
    found = [f"{room}: {_place(sheet)}, {CLIMBS[sheet.climb]}"]
    held = NOT_DECIDED if sheet.held_by is None else sheet.held_by
    surface = "a surface that is not known" if sheet.surface == "unknown" else sheet.surface
    if sheet.on != "free":
        drilled = "" if sheet.drilled is None else f"; {DRILLED[sheet.drilled]}"
        found.append(f"held by: {held}, on {surface}{drilled}")
    if sheet.least_surface_c is not None and sheet.least_paint_days is not None:
        found.append(
            f"tape wants the surface at {quantity(sheet.least_surface_c, 'deg C', 1.0, is_plain=True)} or warmer, "
            f"painted {sheet.least_paint_days:.0f} days ago or longer, cleaned and dry"
        )
    return tuple(found)


def _place(sheet: FixingSheet) -> str:
    high = f"{quantity(sheet.height_m, 'm', 0.01, is_plain=True)} above the floor"
    if sheet.on == "opening":
        return f"on its opening, up to {high}"
    if sheet.corner is None or sheet.from_corner_m is None:
        return f"on the ceiling, {high}" if sheet.on == "ceiling" else f"stands free, {high}"
    end = "corner" if sheet.space is not None else "end of the wall"
    return f"{_cm(sheet.from_corner_m)} from the {sheet.corner} {end} as one faces the wall, {high}"


def _cm(metres: float) -> str:
    return f"{metres * 100.0:.0f} cm"


def move_words(move: RoomToMove, names: Names) -> tuple[str, ...]:
    """How far a device may go each way, a sentence each without a full stop."""
    return tuple(_leeway(one, names) for one in move.ways)


def _leeway(one: Leeway, names: Names) -> str:
    way = one.way if one.unit == "deg" else f"moved {one.way}"
    if one.fails_at is None:
        return f"{way}: {_amount(one, one.holds)}, and perhaps farther"
    why = "the wall or the room ends, or an opening is there"
    if one.question is not None:
        why = f"{QUESTION_SHORT.get(one.question, str(one.question))} of {names.of(one.subject)} fails"
    elif one.rule:
        why = f"{one.rule} for {names.of(one.subject)}"
    return f"{way}: {_amount(one, one.holds)}; at {_amount(one, one.fails_at)} {why}"


def _amount(one: Leeway, value: float) -> str:
    return _cm(value) if one.unit == "m" else f"{value:.0f} degrees"


def fit_plan_table(plan: FitPlan, site: Site, catalogue: Catalogue) -> Table:
    """One row a device, in the order of fitting; what is not known, or was not tried, says so."""
    names = names_of(site, catalogue)
    moves = {one.device: one for one in plan.moves}
    stages = {
        one: step.stage for step in plan.steps if step.stage not in FIXES_NOTHING for one in step.devices
    }
    rows: list[tuple[Cell, ...]] = []
    for number, sheet in enumerate(plan.sheets, 1):
        move = moves.get(sheet.device)
        by_way = {} if move is None else {one.way: one for one in move.ways}
        none = NOT_TRIED if move is None else NONE
        rows.append(
            (
                number,
                stages[sheet.device],
                names.of(sheet.device),
                OUTSIDE if sheet.space is None else names.of(sheet.space),
                NONE if sheet.corner is None else sheet.corner,
                NONE if sheet.from_corner_m is None else round(sheet.from_corner_m, 3),
                round(sheet.height_m, 3),
                sheet.climb,
                sheet.held_by or NOT_DECIDED,
                NOT_KNOWN if sheet.surface == "unknown" else sheet.surface,
                sheet.drilled or NONE,
                NONE if sheet.least_surface_c is None else sheet.least_surface_c,
                NONE if sheet.least_paint_days is None else sheet.least_paint_days,
                round(sheet.minutes),
                *(
                    none
                    if (one := by_way.get(way)) is None  # type: ignore[call-overload]
                    else round(one.holds * 100.0 if one.unit == "m" else one.holds)
                    for way in WAYS
                ),
                " ".join(DANGERS[one] for one in sheet.dangers),
            )
        )
    return Table("Fitting", COLUMNS, tuple(rows))
