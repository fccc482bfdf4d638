"""All papers of a site, by the folder of their class of copy: which there are, and the bytes of each."""

from __future__ import annotations

from datetime import date

from wardwright.documents.content.as_fitted import as_fitted, as_fitted_table
from wardwright.documents.content.copies import COPIES
from wardwright.documents.content.label_list import label_list, label_table
from wardwright.documents.content.page import Page
from wardwright.documents.content.paper import CopyClass
from wardwright.documents.content.plan_sheets import plan_sheets
from wardwright.documents.content.programming import programming_sheet
from wardwright.documents.content.protection_paper import protection_paper
from wardwright.documents.content.schedule import device_table, schedule, zone_table
from wardwright.documents.writers.csv_rows import write_csv
from wardwright.documents.writers.html import write_html
from wardwright.documents.writers.paper_html import write_paper_html
from wardwright.documents.writers.pdf import write_pdf
from wardwright.documents.writers.svg import write_svg
from wardwright.documents.writers.xlsx import write_xlsx
from wardwright.model.catalogue import Catalogue
from wardwright.model.record import Record
from wardwright.model.site import Site
from wardwright.questions.answer import Answer

PAGE = "page.html"
NAMES: dict[CopyClass, tuple[str, ...]] = {
    "fitter": (
        PAGE,
        "plan.pdf",
        "programming.pdf",
        "programming.html",
        "schedule.xlsx",
        "devices.csv",
        "zones.csv",
    ),
    "client": ("protection.pdf",),
    "open": ("as-fitted.pdf", "as-fitted.csv", "labels.pdf", "labels.csv"),
}
"""Of every site; the fitter's copy has a picture for each storey besides."""


TITLES = {
    PAGE: "All answers, findings and plans on one page",
    "plan.pdf": "Plan for fitting, at its scale",
    "programming.pdf": "Programming sheet",
    "programming.html": "Programming sheet, for a screen",
    "schedule.xlsx": "Devices and zones, as a spreadsheet",
    "devices.csv": "Devices, as plain rows",
    "zones.csv": "Zones, as plain rows",
    "protection.pdf": "What is protected and what is not",
    "as-fitted.pdf": "As-fitted record",
    "as-fitted.csv": "As-fitted record, as plain rows",
    "labels.pdf": "Labels",
    "labels.csv": "Labels, as plain rows",
}
"""What each file is."""


class PaperLine(Record):
    """One paper that can be had."""

    name: str
    title: str


class PaperClass(Record):
    """The papers of one class of copy."""

    copy_class: CopyClass
    stamp: str
    """Whom it is for."""
    warning: str
    papers: tuple[PaperLine, ...]


def paper_classes(site: Site) -> tuple[PaperClass, ...]:
    """Which papers of a site can be had, by class of copy, before anything is worked out."""
    pictures = tuple(
        PaperLine(name=_picture(storey.id), title=f"Where anybody is noticed: {storey.name}")
        for storey in site.storeys
    )
    return tuple(
        PaperClass(
            copy_class=copy,
            stamp=COPIES[copy].stamp,
            warning=COPIES[copy].warning,
            papers=(
                *(PaperLine(name=name, title=TITLES[name]) for name in names),
                *(pictures if copy == "fitter" else ()),
            ),
        )
        for copy, names in NAMES.items()
    )


def paper_names(site: Site) -> tuple[str, ...]:
    """The files that a site's papers will be, each with its folder, before anything is worked out."""
    pictures = tuple(f"{COPIES['fitter'].folder}/{_picture(storey.id)}" for storey in site.storeys)
    return (
        tuple(f"{COPIES[copy].folder}/{name}" for copy, names in NAMES.items() for name in names) + pictures
    )


def _picture(storey_id: str) -> str:
    return f"plan-noticed-{storey_id}.svg"


def papers_of(
    site: Site,
    catalogue: Catalogue,
    *,
    page: Page,
    answers: tuple[Answer, ...],
    drawn_up: date,
    font_folder: str,
) -> dict[str, bytes]:
    """Write all papers of a site.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue
        Says what each device is.
    page : Page
        The fitter's page, drawn.
    answers : tuple of Answer
        What the page was made from; the client's copy tells their mends in words.
    drawn_up : date
        The day that stands on the papers.
    font_folder : str
        Where the letters of PDF files are.

    Returns
    -------
    dict of bytes
        By folder and name; nothing of one class of copy is in the folder of another.
    """
    written = {
        "fitter": fitter_papers(site, catalogue, page=page, drawn_up=drawn_up, font_folder=font_folder),
        "client": client_papers(site, catalogue, answers, drawn_up=drawn_up, font_folder=font_folder),
        "open": open_papers(site, catalogue, drawn_up=drawn_up, font_folder=font_folder),
    }
    return {
        f"{words.folder}/{name}": content
        for copy, words in COPIES.items()
        for name, content in written[copy].items()
    }


def fitter_papers(
    site: Site, catalogue: Catalogue, *, page: Page, drawn_up: date, font_folder: str
) -> dict[str, bytes]:
    """Write the fitter's own papers, by name: they hold all."""
    programming = programming_sheet(site, catalogue, drawn_up=drawn_up)
    return {
        PAGE: write_html(page),
        "plan.pdf": write_pdf(plan_sheets(site, catalogue, drawn_up=drawn_up), font_folder=font_folder),
        "programming.pdf": write_pdf(programming, font_folder=font_folder),
        "programming.html": write_paper_html(programming),
        "schedule.xlsx": write_xlsx(schedule(site, catalogue, drawn_up=drawn_up)),
        "devices.csv": write_csv(device_table(site, catalogue)),
        "zones.csv": write_csv(zone_table(site, catalogue)),
        **{f"plan-{storey.drawing.key}.svg": write_svg(storey.drawing) for storey in page.storeys},
    }


def client_papers(
    site: Site, catalogue: Catalogue, answers: tuple[Answer, ...], *, drawn_up: date, font_folder: str
) -> dict[str, bytes]:
    """Write the client's confidential papers, by name."""
    paper = protection_paper(site, catalogue, answers, drawn_up=drawn_up)
    return {"protection.pdf": write_pdf(paper, font_folder=font_folder)}


def open_papers(site: Site, catalogue: Catalogue, *, drawn_up: date, font_folder: str) -> dict[str, bytes]:
    """Write the papers for the customer's files, by name."""
    return {
        "as-fitted.pdf": write_pdf(as_fitted(site, catalogue, drawn_up=drawn_up), font_folder=font_folder),
        "as-fitted.csv": write_csv(as_fitted_table(site, catalogue)),
        "labels.pdf": write_pdf(label_list(site, catalogue, drawn_up=drawn_up), font_folder=font_folder),
        "labels.csv": write_csv(label_table(site, catalogue)),
    }
