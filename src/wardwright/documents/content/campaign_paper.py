"""The campaign of seeded intruders on paper: for the fitter alone, since it tells how to get in."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date
from string import ascii_uppercase

from wardwright.documents.content.campaign_tables import (
    beaten_table,
    caught_table,
    losses_table,
    paths_table,
    ways_table,
    why_table,
)
from wardwright.documents.content.paper import Paper, Section
from wardwright.documents.content.quantities import sentence
from wardwright.documents.content.shares_told import percent_alone
from wardwright.documents.drawing.plan import BasePlan, plan_with
from wardwright.documents.drawing.quantiles import SpreadRow, spreads
from wardwright.documents.drawing.recording import Drawing
from wardwright.model.sketch import Sketch
from wardwright.trials.campaign.results import Beaten, CampaignReport, PathResult
from wardwright.trials.campaign.shares import Spread

TITLE = "What seeded intruders did"
PATHS_DRAWN = 3
"""Least-detected paths that are drawn, those least often interrupted, each from another way in. [-]"""
SPREADS_WIDE_S = (30.0, 60.0, 120.0, 240.0, 480.0)
"""What the axis of times may end at. [s]"""


def campaign_paper(
    report: CampaignReport, *, bases: tuple[BasePlan, ...], house: str, drawn_up: date
) -> Paper:
    """Put a campaign on paper.

    Parameters
    ----------
    report : CampaignReport
        The campaign.
    bases : tuple of BasePlan
        The storeys, on which its paths are drawn.
    house : str
        What the house is called.
    drawn_up : date
        The day the paper is made.

    Returns
    -------
    Paper
        A fitter's paper.
    """
    return Paper(
        title=TITLE,
        house=house,
        copy="fitter",
        drawn_up=drawn_up,
        sections=campaign_sections(report, bases=bases),
        foot=_what(report),
    )


def campaign_sections(report: CampaignReport, *, bases: tuple[BasePlan, ...]) -> tuple[Section, ...]:
    """A campaign as sections: how many are caught, when, by which ways, why not, and what nobody knows.

    Parameters
    ----------
    report : CampaignReport
        The campaign.
    bases : tuple of BasePlan
        The storeys, on which its paths are drawn.

    Returns
    -------
    tuple of Section
        What the numbers cannot know stands beside the first of them.
    """
    lost, least = lettered_paths(report)
    return (
        Section("Caught", text=(_what(report),), table=caught_table(report)),
        Section("What these numbers cannot know", points=tuple(sentence(one) for one in report.cannot_know)),
        Section("When", text=(WHEN,), drawing=_times(report)),
        Section("By way in", text=_closed(report), table=ways_table(report)),
        Section(
            "Ways on which the design loses",
            text=() if report.beaten else ("None in these trials.",),
            table=beaten_table(report) if report.beaten else None,
        ),
        *_plans(bases, lost, what="ways on which the design loses"),
        Section("Why they were missed", text=(WHY,), table=why_table(report)),
        Section("One thing lost", text=(LOST,), table=losses_table(report)),
        Section(
            "Where they are least likely noticed",
            text=(LEAST,),
            table=paths_table(report, worst_paths(report)),
        ),
        *_plans(bases, least, what="least-detected paths to the control unit"),
    )


WHEN = (
    "Seconds from the opening being open, where it happens: a line from the 5th to the 95th percentile, a box about "
    "the middle half, a stroke at the middle; how often it never happens stands beside it."
)
WHY = (
    "Each miss was played again with one input after another as in the design case. What mends it by itself is "
    "named; a miss may stand in more than one row."
)
LOST = (
    "The same intruders with one thing lost. Without all sounders, or without all message paths, that need is never "
    "met."
)
LEAST = (
    "From each way in to the control unit: the path on which devices are least likely to notice, whatever it takes, "
    "and how often the alarm still does what is needed before its end (interruption estimate). The three that are "
    "least often interrupted are drawn."
)


def worst_paths(report: CampaignReport) -> tuple[PathResult, ...]:
    """The least-detected paths that are drawn: those least often interrupted, one from each opening."""
    found: dict[str, PathResult] = {}
    for one in report.paths:
        found.setdefault(one.opening, one)
    return tuple(found.values())[:PATHS_DRAWN]


def lettered_paths(report: CampaignReport) -> tuple[Mapping[str, tuple[Sketch, ...]], ...]:
    """By storey: the ways on which the design loses, by letters, and the least-detected paths, by numbers."""
    return _lettered(report.beaten, ascii_uppercase), _lettered(worst_paths(report), "123456789")


def _what(report: CampaignReport) -> str:
    return (
        f"{report.trials} seeded intruders, seed {report.seed}, part '{report.part}' set. In brackets the exact "
        "binomial interval (95 %)."
    )


def _times(report: CampaignReport) -> Drawing:
    known = [one for one in report.times if one.middle_s is not None and one.three_quarters_s is not None]
    longest = max((one.three_quarters_s or 0.0 for one in known), default=0.0)
    end = next((wide for wide in SPREADS_WIDE_S if longest <= wide), SPREADS_WIDE_S[-1])
    rows = tuple(_row(one) for one in report.times)
    return spreads(
        rows,
        end=end,
        unit="s",
        key="campaign-times",
        description="; ".join(f"{row.name}: {row.words}" for row in rows),
    )


def _row(one: Spread) -> SpreadRow:
    never = f"never {percent_alone(one.never)}"
    if one.low_s is None or one.middle_s is None or one.high_s is None:
        return SpreadRow(one.name, never, 0.0, None, 0.0)
    words = f"{one.low_s:.1f} / {one.middle_s:.1f} / {one.high_s:.1f} s, {never}"
    half = (one.quarter_s or 0.0, one.three_quarters_s or 0.0)
    return SpreadRow(one.name, words, one.low_s, one.middle_s, one.high_s, half)


def _closed(report: CampaignReport) -> tuple[str, ...]:
    return tuple(f"{name}: no way on foot leads from it, and nobody is sent there." for name in report.closed)


def _lettered(paths: Iterable[Beaten | PathResult], letters: str) -> Mapping[str, tuple[Sketch, ...]]:
    """The lines of each storey, the letter of their path at the last of them there."""
    found: dict[str, list[Sketch]] = {}
    for letter, path in zip(letters, paths, strict=False):
        last = {one.storey: i for i, one in enumerate(path.sketches)}
        for i, one in enumerate(path.sketches):
            label = letter if last[one.storey] == i else ""
            found.setdefault(one.storey, []).append(one.model_copy(update={"label": label}))
    return {storey: tuple(lines) for storey, lines in found.items()}


def _plans(
    bases: tuple[BasePlan, ...], lines: Mapping[str, tuple[Sketch, ...]], *, what: str
) -> tuple[Section, ...]:
    kind = what.partition(" ")[0]
    return tuple(
        Section(
            f"{base.name}: {what}",
            drawing=plan_with(
                base,
                lines[base.storey],
                key=f"campaign-{kind}-{base.storey}",
                title=f"{base.name}: {what}",
                description=f"Plan of {base.name} at 1:{base.sheet.scale} with {what}.",
            ),
        )
        for base in bases
        if base.storey in lines
    )
