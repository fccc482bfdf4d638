"""A campaign as lines for a terminal: for the fitter alone."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.documents.content.shares_told import hundredths, percent, percent_alone
from wardwright.documents.writers.text import WIDTH, continued
from wardwright.trials.campaign.results import CampaignReport, PathResult, WayResult
from wardwright.trials.campaign.shares import Spread

PATHS_SHOWN = 5
"""Least-detected paths, at most; all are in the JSON. [-]"""


def campaign_text(report: CampaignReport, *, width: int = WIDTH) -> str:
    """Write a campaign as lines.

    Parameters
    ----------
    report : CampaignReport
        The campaign.
    width : int, default 100
        Columns that lines are folded to. [-]

    Returns
    -------
    str
        First how many are caught, then where and why not, last what the numbers cannot know.
    """
    parts = (
        _caught(report),
        _times(report),
        _by_way(report),
        _beaten(report),
        _why(report),
        _losses(report),
        _paths(report),
        _shares(report),
        _cannot_know(report),
    )
    lines = [line for part in parts for text in part for line in continued(text, width)]
    return "\n".join(lines).strip() + "\n"


def _caught(report: CampaignReport) -> Iterator[str]:
    yield (
        f"{report.site}: {report.trials} seeded intruders, seed {report.seed}, part '{report.part}' set. In brackets "
        "the exact binomial interval (95 %)."
    )
    yield ""
    goal = "the first target is touched" if report.targets else "the control unit is reached"
    yield f"  sounder before {goal}: {percent(report.before_target)}"
    if report.before_unit is None:
        yield "  message before the control unit is broken: not computable: no control unit"
    else:
        yield f"  message before the control unit is broken: {percent(report.before_unit)}"
        yield f"  both: {percent(report.both)}"
    for name, share in report.targets:
        yield f"  of those who get to '{name}', sounder before: {percent(share)}"
    if report.second is None:
        yield f"  second, independent detection: {report.second_reason}"
    else:
        minutes = (report.second_window_s or 0.0) / 60.0
        yield f"  second, independent detection within {minutes:g} min, of those noticed: {percent(report.second)}"
        yield f"    window: {report.second_limit}"


def _times(report: CampaignReport) -> Iterator[str]:
    yield ""
    yield "SECONDS from the opening being open: 5th, 50th, 95th percentile, and how often never"
    wide = max(len(one.name) for one in report.times)
    for one in report.times:
        yield f"  {one.name:<{wide}}  {_seconds(one)}  never {percent_alone(one.never)}"


def _seconds(one: Spread) -> str:
    values = (one.low_s, one.middle_s, one.high_s)
    return "".join("       -" if value is None else f"{value:8.1f}" for value in values)


def _by_way(report: CampaignReport) -> Iterator[str]:
    yield ""
    yield "BY WAY IN: share of intruders; sounder and message in time"
    for one in sorted(report.ways, key=lambda way: (way.sounder.value or 0.0, way.opening, way.manner)):
        yield (
            f"  {_way(one)}: {percent_alone(one.share)} come here; {percent(one.sounder)}; "
            + percent(one.message)
        )
    for name in report.closed:
        yield f"  {name}: no way on foot leads from it, and nobody is sent there"


def _way(one: WayResult | PathResult) -> str:
    return f"{one.name}, {one.manner}"


def _beaten(report: CampaignReport) -> Iterator[str]:
    yield ""
    if not report.beaten:
        yield "NO PATH BEAT THE DESIGN in these trials"
        return
    yield "PATHS THAT BEAT THE DESIGN, most intruders lost first"
    for one in report.beaten:
        rooms = " - ".join(one.rooms) or "straight"
        yield (
            f"  {one.way}, {one.manner}, first to '{one.first}' by {rooms}: "
            f"{percent_alone(one.lost)} of all are lost here, {percent(one.own)} of those who go so"
        )


def _why(report: CampaignReport) -> Iterator[str]:
    for one in report.why:
        yield ""
        yield f"WHY MISSED ({one.need}): {one.traced} misses traced"
        if not one.traced:
            continue
        yield f"  {percent(one.design)}: the design case does not hold from there; mend the design"
        for cause in one.causes:
            yield f"  {percent(cause.share)}: {cause.what}"
        for bug in one.bugs:
            yield f"  A FAULT OF THE PROGRAM: {bug} was said to be caught in time, and was not. Please report it."


def _losses(report: CampaignReport) -> Iterator[str]:
    if not report.losses:
        return
    yield ""
    yield f"ONE THING LOST: what is left, of the same {report.losses[0].sounder.trials} intruders"
    for one in report.losses:
        yield (
            f"  {one.name}: sounder {percent_alone(one.sounder)} ({100.0 * one.sounder_change:+.1f}), "
            f"message {percent_alone(one.message)} ({100.0 * one.message_change:+.1f})"
        )
    yield "  Without all sounders, or without all message paths, that need is never met."


def _paths(report: CampaignReport) -> Iterator[str]:
    if not report.paths:
        return
    yield ""
    yield "LEAST-DETECTED PATHS to the control unit, and the interruption estimate, lowest first"
    for one in report.paths[:PATHS_SHOWN]:
        last = (
            f"critical detection point: {one.last_timely}" if one.last_timely else "too late from the start"
        )
        yield (
            f"  {_way(one)}, {one.need}: by {' - '.join(one.rooms)}: detected {hundredths(one.detected)} %, in time "
            f"{hundredths(one.interrupted)} %; {last}"
        )


def _shares(report: CampaignReport) -> Iterator[str]:
    yield ""
    yield "BY WHICH WAY THEY COME: rows of entry_shares.toml, of whose shares what fits this house is used"
    for one in report.entries:
        note = f"; {one.note}" if one.note else ""
        yield f"  {one.name}: {hundredths(one.share)} % ({one.mark}; {one.source}{note})"


def _cannot_know(report: CampaignReport) -> Iterator[str]:
    yield ""
    yield "WHAT THESE NUMBERS CANNOT KNOW"
    for one in report.cannot_know:
        yield f"  {one}"
