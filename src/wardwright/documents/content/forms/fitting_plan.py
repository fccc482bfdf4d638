"""The plan of fitting on paper: what is done in which order, and a sheet for each device."""

from __future__ import annotations

from datetime import date

from wardwright.documents.content.fit_plan_words import HOW_TRIED, move_words, sheet_words, stage_words
from wardwright.documents.content.forms.slots import NO_CODES
from wardwright.documents.content.names import Names, names_of
from wardwright.documents.content.paper import Cell, Column, Paper, Section, Table
from wardwright.documents.content.quantities import sentence
from wardwright.documents.content.wording import DANGERS
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.fit_plan import FitPlan
from wardwright.questions.room_to_move import RoomToMove
from wardwright.works.fitting_order import FIXES_NOTHING
from wardwright.works.fixing_sheet import FixingSheet

COLUMNS = (
    Column("Device", share=1.5),
    Column("Where it goes, and how it is held", share=3.0),
    Column("How far it may give way", share=3.0),
)


def fitting_plan(plan: FitPlan, site: Site, catalogue: Catalogue, *, drawn_up: date) -> Paper:
    """Put the plan of fitting on paper.

    Parameters
    ----------
    plan : FitPlan
        It.
    site : Site
        The design.
    catalogue : Catalogue
        For names.
    drawn_up : date
        The day the paper is made.

    Returns
    -------
    Paper
        What to beware of first, once; then stage by stage.
    """
    names = names_of(site, catalogue)
    sheets = {one.device: one for one in plan.sheets}
    moves = {one.device: one for one in plan.moves}
    dangers = dict.fromkeys(danger for sheet in plan.sheets for danger in sheet.dangers)
    sections = [Section("What to beware of", points=tuple(DANGERS[one] for one in dangers))]
    for number, step in enumerate(plan.steps, 1):
        heading = f"{number}. {sentence(stage_words(step))[:-1]}"
        if step.stage in FIXES_NOTHING or not step.devices:
            sections.append(Section(heading, points=tuple(names.of(one) for one in step.devices)))
            continue
        rows = tuple(_row(sheets[one], moves.get(one), names) for one in step.devices)
        columns = COLUMNS if plan.moves else COLUMNS[:2]
        table = Table(f"Stage {number}", columns, tuple(row[: len(columns)] for row in rows))
        sections.append(Section(heading, table=table))
    return Paper(
        title="Plan of fitting",
        house=plan.house,
        copy="fitter",
        drawn_up=drawn_up,
        foot=(HOW_TRIED + " " if plan.moves else "") + NO_CODES,
        sections=tuple(sections),
    )


def _row(sheet: FixingSheet, move: RoomToMove | None, names: Names) -> tuple[Cell, ...]:
    """Which device, where it goes and how it is held, and how far it may give way."""
    told = [one for one in sheet_words(sheet, names) if sentence(one) not in DANGERS.values()]
    ways = () if move is None else move_words(move, names)
    return (
        names.of(sheet.device),
        " ".join(sentence(one) for one in told),
        " ".join(sentence(one) for one in ways) if ways else "not tried",
    )
