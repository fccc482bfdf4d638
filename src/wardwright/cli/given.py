"""What commands are given: a site by path or by name of a sample, and device sheets."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from wardwright.errors import InputError

if TYPE_CHECKING:  # pydantic is not to be loaded for --help
    from wardwright.intake.report import IntakeReport
    from wardwright.model.catalogue import Catalogue
    from wardwright.model.site import Site
    from wardwright.works.site_result import SiteResult

SAMPLE, JOB = "sample:", ".job"


def site_from(text: str, catalogue: Catalogue) -> Site:
    """Read the site that a command was given.

    Parameters
    ----------
    text : str
        A path of a site document, or of a job, whose newest revision is taken; or ``sample:`` and the name of a
        sample.
    catalogue : Catalogue
        The rows that the site may name.

    Returns
    -------
    Site
        The site.

    Raises
    ------
    InputError
        If it cannot be read, does not hold together, or there is no such sample.
    """
    if text.startswith(SAMPLE):
        from wardwright.store.samples import read_sample

        return read_sample(text.removeprefix(SAMPLE))
    if Path(text).suffix.lower() == JOB:
        from wardwright.store.jobs.opening import open_job

        with open_job(Path(text)) as job:
            return job.site()
    if Path(text).suffix.lower() in (".dxf", ".ifc", ".notes"):
        raise InputError(
            "this is no site document",
            where=text,
            cure=f"Bring it in first: wardwright intake {text} -o {Path(text).stem}.json",
        )
    from wardwright.store.sites import read_site

    return read_site(Path(text), catalogue)


def results_from(text: str, site: Site, catalogue: Catalogue) -> tuple[SiteResult, ...]:
    """Read what was written down on site, held against the house as it is; nothing where it is no job."""
    if text.startswith(SAMPLE) or Path(text).suffix.lower() != JOB:
        return ()
    from wardwright.questions.results_since import as_they_hold
    from wardwright.store.jobs.opening import open_job
    from wardwright.store.jobs.results import results_of

    with open_job(Path(text)) as job:
        found = results_of(job)
        sites = {number: job.site(number) for number in {one.revision for one in found}}
    return as_they_hold(found, site, catalogue, sites=sites)


def report_from(text: str) -> IntakeReport | None:
    """Read what the intake of the site that a command was given had to say, where that was kept."""
    if text.startswith(SAMPLE):
        return None
    from wardwright.store.reports import kept_report

    return kept_report(Path(text))


def catalogue_from(sheets: Sequence[str]) -> Catalogue:
    """Read the catalogue, with the user's own sheets added."""
    from wardwright.store.catalogue import load_catalogue

    return load_catalogue([Path(sheet) for sheet in sheets])
