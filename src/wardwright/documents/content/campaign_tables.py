"""The tables of a campaign of seeded intruders."""

from __future__ import annotations

from string import ascii_uppercase

from wardwright.documents.content.paper import Column, Table
from wardwright.documents.content.shares_told import hundredths, percent, percent_alone
from wardwright.trials.campaign.results import CampaignReport, PathResult
from wardwright.trials.timely import Need

NEEDS: dict[Need, str] = {
    "sounder": "a sounder before a target is touched",
    "message": "a message before the control unit is broken",
}


def caught_table(report: CampaignReport) -> Table:
    """How many are caught, before what."""
    goal = "the first target is touched" if report.targets else "the control unit is reached"
    rows: list[tuple[str, str]] = [(f"sounder before {goal}", percent(report.before_target))]
    if report.before_unit is None:
        rows.append(("message before the control unit is broken", "not computable: no control unit"))
    else:
        rows += [
            ("message before the control unit is broken", percent(report.before_unit)),
            ("both", percent(report.both)),
        ]
    rows += [
        (f"of those who get to '{name}', sounder before", percent(share)) for name, share in report.targets
    ]
    minutes = (report.second_window_s or 0.0) / 60.0
    rows.append(
        ("second, independent detection", report.second_reason or "not computable")
        if report.second is None
        else (
            f"second, independent detection within {minutes:g} min, of those noticed ({report.second_limit})",
            percent(report.second),
        )
    )
    return Table("Caught", (Column("Caught by", share=2.0), Column("How often")), tuple(rows))


def ways_table(report: CampaignReport) -> Table:
    """How many of each way in are caught, fewest first."""
    columns = (
        Column("Way in", share=2.0), Column("Come here"), Column("Sounder in time", share=1.5),
        Column("Message in time", share=1.5),
    )  # fmt: skip
    ordered = sorted(report.ways, key=lambda one: (one.sounder.value or 0.0, one.opening, one.manner))
    return Table(
        "By way in",
        columns,
        tuple(
            (
                f"{one.name}, {one.manner}",
                percent_alone(one.share),
                percent(one.sounder),
                percent(one.message),
            )
            for one in ordered
        ),
    )


def beaten_table(report: CampaignReport) -> Table:
    """The ways on which most are lost, by their letters on the plan."""
    columns = (
        Column("On the plan", share=0.6), Column("From", share=1.4), Column("First to", share=1.4),
        Column("By", share=1.8), Column("Lost here, of all"), Column("Of those who go so", share=1.4),
    )  # fmt: skip
    return Table(
        "Ways lost",
        columns,
        tuple(
            (
                letter,
                f"{one.way}, {one.manner}",
                one.first,
                " - ".join(one.rooms) or "straight",
                percent_alone(one.lost),
                percent(one.own),
            )
            for letter, one in zip(ascii_uppercase, report.beaten, strict=False)
        ),
    )


def why_table(report: CampaignReport) -> Table:
    """What the misses were traced to, need by need."""
    rows: list[tuple[str, str, str]] = []
    for one in report.why:
        need = f"{NEEDS[one.need]} ({one.traced} misses traced)"
        if not one.traced:
            rows.append((need, "no miss", ""))
            continue
        rows.append((need, "the design case does not hold from there: mend the design", percent(one.design)))
        rows += [("", cause.what, percent(cause.share)) for cause in one.causes]
        rows += [
            ("", f"a fault of the program: {bug} was said to be caught in time; please report it", "")
            for bug in one.bugs
        ]
    columns = (
        Column("Missed", share=1.4),
        Column("Because of", share=2.2),
        Column("Of the misses", share=1.2),
    )
    return Table("Why missed", columns, tuple(rows))


def losses_table(report: CampaignReport) -> Table:
    """What is left of the catch with one thing lost."""
    columns = (
        Column("Lost", share=1.8), Column("Sounder in time"), Column("Change", unit="%", share=0.7),
        Column("Message in time"), Column("Change", unit="%", share=0.7),
    )  # fmt: skip
    return Table(
        "One thing lost",
        columns,
        tuple(
            (
                one.name,
                percent_alone(one.sounder),
                f"{100.0 * one.sounder_change:+.1f}",
                percent_alone(one.message),
                f"{100.0 * one.message_change:+.1f}",
            )
            for one in report.losses
        ),
    )


def paths_table(report: CampaignReport, drawn: tuple[PathResult, ...]) -> Table:
    """The least-detected path of each way in; those that are drawn have their number."""
    columns = (
        Column("On the plan", share=0.6), Column("From", share=1.4), Column("Need", share=0.8),
        Column("By", share=1.8), Column("Noticed"), Column("In time"), Column("Noticed in time up to", share=1.4),
    )  # fmt: skip
    numbers = {id(one): str(i) for i, one in enumerate(drawn, start=1)}
    return Table(
        "Least detected",
        columns,
        tuple(
            (
                numbers.get(id(one), ""),
                f"{one.name}, {one.manner}",
                one.need,
                " - ".join(one.rooms),
                f"{hundredths(one.detected)} %",
                f"{hundredths(one.interrupted)} %",
                one.last_timely or "too late from the start",
            )
            for one in report.paths
        ),
    )
