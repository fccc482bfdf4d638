"""The label sheet: a label for the inside of each cover, with a code that a telephone reads."""

from __future__ import annotations

from datetime import date

from wardwright.documents.content.discretion import discreet
from wardwright.documents.content.label_list import HOW_TO_USE, label_table
from wardwright.documents.content.paper import Label, Paper, Section, told
from wardwright.documents.content.schedule import NONE
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site

WHAT_IT_HOLDS = "Its square holds the device\u2019s number and name, and nothing else."


def label_sheet(site: Site, catalogue: Catalogue, *, drawn_up: date) -> Paper:
    """Lay out the labels of a site.

    Parameters
    ----------
    site : Site
        Its devices and zones.
    catalogue : Catalogue
        Says what each device is.
    drawn_up : date
        The day the paper is made.

    Returns
    -------
    Paper
        By zone; devices without one last. What is withheld has its kind for a name.
    """
    labels = tuple(
        Label(
            code=f"{number} {device}",
            title=str(device),
            lines=(
                f"{number}, in no zone" if zone == NONE else f"{number}, zone {zone}: {shown}",
                f"Replace before: {told(until)}",
            ),
        )
        for number, zone, shown, device, until in label_table(site, catalogue).rows
    )
    return Paper(
        title="Labels",
        house=discreet(site.name, site, catalogue),
        copy="open",
        drawn_up=drawn_up,
        sections=(Section("To cut out", text=() if labels else ("No devices.",), labels=labels),),
        foot=f"{HOW_TO_USE} {WHAT_IT_HOLDS}",
    )
