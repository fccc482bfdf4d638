"""What an intake read, guessed and left out: kept beside the site document, for the papers."""

from __future__ import annotations

from pathlib import Path

from pydantic import ValidationError

from wardwright.errors import DocumentError
from wardwright.intake.report import IntakeReport
from wardwright.store.texts import read_text, write_text

LARGEST_REPORT_BYTES = 5_000_000
"""A report longer than this is refused: a block of flats needs some 20 000. [bytes] (assumption)"""


def report_place(site: Path) -> Path:
    """Where the report of a site document is kept.

    Examples
    --------
    >>> report_place(Path("jobs/mill.json")).as_posix()
    'jobs/mill.report.json'
    """
    return site.with_name(f"{site.stem}.report.json")


def keep_report(site: Path, report: IntakeReport | None) -> None:
    """Write the report beside its site document; without one, take an older house's away.

    Parameters
    ----------
    site : Path
        Where the site document is.
    report : IntakeReport or None
        What the intake has to say; None when it read notes only.

    Raises
    ------
    DocumentError
        If it cannot be written or taken away.
    """
    place = report_place(site)
    if report is not None:
        write_text(place, report.model_dump_json(indent=1) + "\n", fault=DocumentError)
        return
    try:
        place.unlink(missing_ok=True)
    except OSError as trouble:
        raise DocumentError(
            f"the report of an earlier intake cannot be taken away ({trouble.strerror})",
            where=str(place),
            cure="Take it away, or write the site document elsewhere",
        ) from None


def kept_report(site: Path) -> IntakeReport | None:
    """Read the report beside a site document.

    Parameters
    ----------
    site : Path
        Where the site document is.

    Returns
    -------
    IntakeReport or None
        None where there is none.

    Raises
    ------
    DocumentError
        If there is one that cannot be read.
    """
    place = report_place(site)
    if not place.exists():
        return None
    cure = "Run the intake again, or take this file away: the papers can be written without it"
    text = read_text(place, "report", fault=DocumentError, largest_bytes=LARGEST_REPORT_BYTES, cure=cure)
    try:
        return IntakeReport.model_validate_json(text)
    except ValidationError:
        raise DocumentError("this is no report of an intake", where=str(place), cure=cure) from None


def report_text(report: IntakeReport) -> str:
    """A report as plain text, to be kept with a job."""
    parts = (
        ("Read", report.read),
        ("Guessed", report.guessed),
        ("Left out", report.left_out),
        ("Odd about the house as drawn", report.oddities),
    )
    lines = [f"Intake of {report.source} ({report.form})"]
    for heading, facts in parts:
        lines += ["", f"{heading}:", *(f"- {fact}" for fact in facts)] if facts else []
    return "\n".join(lines) + "\n"
