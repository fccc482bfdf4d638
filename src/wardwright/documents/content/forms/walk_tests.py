"""The walk-test plan on paper: every test in walking order, with room for what is read."""

from __future__ import annotations

from datetime import date

from wardwright.documents.content.forms.slots import NO_CODES
from wardwright.documents.content.paper import Cell, Column, Paper, Section, Table
from wardwright.documents.content.proving_plan_words import (
    HOW_TO_WALK,
    key_of_test,
    key_of_walk,
    walk_words,
    walks_of,
)
from wardwright.documents.content.quantities import sentence
from wardwright.documents.content.results_told import told_result
from wardwright.documents.content.round_told import plan_names, told_round
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.proving_plan import ProvingPlan
from wardwright.works.site_result import SiteResult

COLUMNS = (
    Column("What to do, and what is expected", share=5.0),
    Column("Read", share=1.6),
    Column("By", share=0.8),
)


def walk_tests(
    plan: ProvingPlan,
    site: Site,
    catalogue: Catalogue,
    *,
    drawn_up: date,
    results: tuple[SiteResult, ...] = (),
) -> Paper:
    """Put the walk-test plan on paper.

    Parameters
    ----------
    plan : ProvingPlan
        It.
    site : Site
        The design.
    catalogue : Catalogue
        For names.
    drawn_up : date
        The day the paper is made.
    results : tuple of SiteResult, default ()
        What was written down on site: it stands where else a hand writes.

    Returns
    -------
    Paper
        Stop by stop in walking order, a row for each test and each walk.
    """
    names, told = plan_names(site, catalogue), told_round(plan.round, site, catalogue)
    written = {one.key: one for one in results if one.step == "prove"}

    def read(key: str) -> tuple[str, str]:
        one = written.get(key)
        return ("", "") if one is None else (told_result(one), one.author)

    sections = [
        Section(
            "How to walk",
            text=(
                sentence(told.heading),
                f"Begin at {told.begins_at}: {told.order}. Back there: {told.back}.",
                HOW_TO_WALK,
            ),
        )
    ]
    for stop, one in zip(plan.round.stops, told.stops, strict=True):
        rows: list[tuple[Cell, ...]] = []
        for test, words in zip(stop.tests, one.tests, strict=True):
            rows.append((sentence(words.what), *read(key_of_test(test))))
            walks = walks_of(plan, test.about, is_view=test.kind == "view") if "view" in test.kind else ()
            rows += [
                (f"\u2013 {sentence(walk_words(walk, names))}", *read(key_of_walk(test, walk)))
                for walk in walks
            ]
        where = f", {one.where}" if one.where else ""
        sections.append(
            Section(
                f"Stop {one.number}{where}: walk there {one.walk}",
                table=Table(f"Stop {one.number}", COLUMNS, tuple(rows), is_filled_in=True),
            )
        )
    if plan.without_walks:
        missing = ", ".join(names.of(one) for one in plan.without_walks)
        sections.append(
            Section(
                "Without a walk",
                text=(f"No walk could be laid out, since what it sees is not known: {missing}.",),
            )
        )
    return Paper(
        title="Walk-test plan",
        house=plan.house,
        copy="fitter",
        drawn_up=drawn_up,
        foot=NO_CODES,
        sections=tuple(sections),
    )
