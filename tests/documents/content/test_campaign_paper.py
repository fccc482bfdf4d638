"""A campaign on paper: every number of the report, its paths drawn, and what nobody knows beside it."""

from __future__ import annotations

from datetime import date
from functools import cache

import pytest

from wardwright.documents.content.campaign_paper import (
    PATHS_DRAWN,
    campaign_paper,
    campaign_sections,
    worst_paths,
)
from wardwright.documents.content.paper import Section
from wardwright.documents.content.plans import whole_plans
from wardwright.documents.content.shares_told import percent
from wardwright.documents.drawing.recording import Box
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.trials.campaign.report import report_of
from wardwright.trials.campaign.results import CANNOT_KNOW, CampaignReport
from wardwright.trials.campaign.run import campaign

CATALOGUE = load_catalogue()


@cache
def report(name: str = "terrace") -> CampaignReport:
    return report_of(campaign(read_sample(name), CATALOGUE, trials=2_000), CATALOGUE)


@cache
def sections(name: str = "terrace") -> tuple[Section, ...]:
    return campaign_sections(report(name), bases=whole_plans(read_sample(name), CATALOGUE))


def cells() -> set[str]:
    return {
        str(cell) for one in sections() if one.table is not None for row in one.table.rows for cell in row
    }


def test_every_share_of_the_report_stands_there_with_its_interval() -> None:
    told = cells()
    one = report()
    assert one.before_unit is not None
    assert one.second is not None
    shares = [one.before_target, one.before_unit, one.both, one.second]
    shares += [way.sounder for way in one.ways] + [way.message for way in one.ways]
    shares += [cause.share for why in one.why for cause in why.causes]
    shares += [path.own for path in one.beaten]
    assert {percent(share) for share in shares} <= told


def test_what_the_numbers_cannot_know_stands_right_after_them() -> None:
    headings = [one.heading for one in sections()]
    assert headings[:2] == ["Caught", "What these numbers cannot know"]
    assert len(sections()[1].points) == len(CANNOT_KNOW)


def test_each_way_that_is_lost_has_its_letter_on_the_plan_and_in_the_table() -> None:
    drawn = [one.drawing for one in sections() if one.drawing and one.drawing.styles_used == ("beaten",)]
    letters = {verb.text for one in drawn for _, verb in one.own.strokes if isinstance(verb, Box)}
    (table,) = (one.table for one in sections() if one.table is not None and one.table.name == "Ways lost")
    assert letters == {row[0] for row in table.rows} == set("ABCDEF"[: len(report().beaten)])


def test_the_least_detected_paths_are_drawn_over_all_storeys_that_they_lead_over() -> None:
    worst = worst_paths(report("terrace-better"))
    assert len(worst) == PATHS_DRAWN
    assert [one.interrupted for one in worst] == sorted(one.interrupted for one in worst)
    storeys = {line.storey for one in worst for line in one.sketches}
    drawn = [
        one.heading for one in sections("terrace-better") if one.drawing and "least-detected" in one.heading
    ]
    assert len(drawn) == len(storeys) == 2


def test_each_thing_lost_has_its_row_with_the_change() -> None:
    (table,) = (one.table for one in sections() if one.heading == "One thing lost")
    assert table is not None
    assert [row[0] for row in table.rows] == [one.name for one in report().losses]
    assert all(str(row[2])[0] in "+-" for row in table.rows)


def test_times_are_drawn_with_how_often_never() -> None:
    (drawing,) = (one.drawing for one in sections() if one.heading == "When")
    assert drawing is not None
    assert all(one.name in drawing.description for one in report().times)
    assert drawing.description.count("never") == len(report().times)


@pytest.mark.parametrize("name", ["one-room", "sunrise", "bungalow", "lakeside"])
def test_every_sample_that_intruders_can_be_sent_into_has_its_paper(name: str) -> None:
    site = read_sample(name)
    paper = campaign_paper(
        report(name), bases=whole_plans(site, CATALOGUE), house=site.name, drawn_up=date(2026, 3, 1)
    )
    assert paper.copy == "fitter"
    assert paper.sections[0].table is not None
    assert len({one.drawing.key for one in paper.sections if one.drawing is not None}) == sum(
        one.drawing is not None for one in paper.sections
    )
