"""What is written down on site of an open job: kept, and held against the house as it is."""

from __future__ import annotations

from wardwright.errors import InputError
from wardwright.questions.results_since import as_they_hold
from wardwright.server.desk import Desk
from wardwright.server.later_steps import keys_of_round
from wardwright.server.messages import ResultWish
from wardwright.store.jobs.results import NewResult, results_of, write_down
from wardwright.works.site_result import SiteResult


def written_down(desk: Desk) -> tuple[SiteResult, ...]:
    """What was written down last of each device and test; what is of an earlier revision says why."""
    return _held(desk, results_of(desk.job))


def keep(desk: Desk, wish: ResultWish) -> SiteResult:
    """Write something down.

    Parameters
    ----------
    desk : Desk
        The open job.
    wish : ResultWish
        What is to be written down, and by which revision of the house.

    Returns
    -------
    SiteResult
        As it is kept.

    Raises
    ------
    InputError
        If it is about a device or a test that the house does not have, or the job refuses it.
    """
    revision = min(max(wish.revision, 1), desk.job.newest)
    site = desk.job.site(revision)
    of = {one.id for one in site.devices} if wish.step == "fit" else keys_of_round(desk, site)
    if wish.key not in of:
        raise InputError(
            "it is about a device or a test that is not there any more",
            where="results",
            cure="Look at the list as it is now, and write it down there",
        )
    new = NewResult(
        sent=wish.id,
        step=wish.step,
        key=wish.key,
        outcome=wish.outcome,
        revision=wish.revision,
        author=wish.author,
        reading=wish.reading.strip(),
        remark=wish.remark.strip(),
        seen=wish.seen,
    )
    return _held(desk, (write_down(desk.job, new),))[0]


def _held(desk: Desk, some: tuple[SiteResult, ...]) -> tuple[SiteResult, ...]:
    now = desk.job.site()
    sites = {number: desk.job.site(number) for number in {one.revision for one in some}}
    return desk.worked_out(lambda: as_they_hold(some, now, desk.catalogue, sites=sites))
