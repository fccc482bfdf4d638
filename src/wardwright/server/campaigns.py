"""A campaign of seeded intruders as long work: sent in block by block, then told in words and drawings."""

from __future__ import annotations

from collections.abc import Mapping
from math import ceil

from wardwright.documents.content.campaign_paper import campaign_sections, lettered_paths
from wardwright.documents.content.paper import Section
from wardwright.documents.content.screen import laid_over
from wardwright.documents.writers.csv_rows import heading_of
from wardwright.documents.writers.svg import fragment_svg, inline_svg
from wardwright.errors import InputError, NotComputable
from wardwright.model.sketch import Sketch
from wardwright.server.desk import Desk
from wardwright.server.work import Work
from wardwright.server.work_messages import CampaignWish, SentIn, SentInPart
from wardwright.trials.campaign.report import report_of
from wardwright.trials.campaign.results import CampaignReport
from wardwright.trials.campaign.run import BLOCK, campaign


def steps_of(wish: CampaignWish) -> int:
    """How many steps a campaign is likely to have: each block, why they were missed, and the drawings."""
    return ceil(wish.trials / BLOCK) + 2


def send_in(desk: Desk, wish: CampaignWish, work: Work) -> SentIn:
    """Send seeded intruders into the house as it is now; nothing is held if it is stopped before.

    Parameters
    ----------
    desk : Desk
        The job's: it holds what came of it, for the fitter's papers of this revision.
    wish : CampaignWish
        How many.
    work : Work
        Is told of each step; Stopped comes from it.

    Returns
    -------
    SentIn
        What they did: for the fitter alone.

    Raises
    ------
    InputError
        If there is no way in, or nothing to go for.
    """
    revision = desk.job.newest
    site = desk.job.site(revision)

    def tell(done: int) -> None:
        work.step(f"sending in intruders {done + 1} to {min(done + BLOCK, wish.trials)}")

    try:
        sent = campaign(site, desk.catalogue, trials=wish.trials, tell=tell)
        work.step("tracing why they were missed")
        report = report_of(sent, desk.catalogue)
    except NotComputable as reason:
        raise InputError(
            f"nobody can be sent in: {reason}", where="the house", cure="Add what is missing, then try again"
        ) from None
    work.step("drawing their ways")
    found = _told(desk, report, revision=revision)
    desk.sent_in = (revision, report)
    return found


def _told(desk: Desk, report: CampaignReport, *, revision: int) -> SentIn:
    lost, least = lettered_paths(report)
    return SentIn(
        revision=revision,
        trials=report.trials,
        # The plan of the page itself shows the ways: none is drawn beside it.
        parts=tuple(_part(one) for one in campaign_sections(report, bases=())),
        lost=_over(desk, lost, revision=revision),
        least=_over(desk, least, revision=revision),
    )


def _part(one: Section) -> SentInPart:
    table = one.table
    return SentInPart(
        heading=one.heading,
        text=one.text,
        points=one.points,
        headings=() if table is None else tuple(heading_of(column) for column in table.columns),
        rows=() if table is None else tuple(tuple(str(cell) for cell in row) for row in table.rows),
        drawing="" if one.drawing is None else inline_svg(one.drawing, drawn=set()),
    )


def _over(desk: Desk, lines: Mapping[str, tuple[Sketch, ...]], *, revision: int) -> dict[str, str]:
    sketches = tuple(sketch for storey in lines.values() for sketch in storey)
    drawn = laid_over(desk.job.site(revision), desk.catalogue, sketches)
    return {storey: fragment_svg(drawing) for storey, drawing in drawn.items()}
