"""What papers are printed with: whose letters, and the size that is in the printer."""

from __future__ import annotations

from typing import NamedTuple

from wardwright.documents.content.paper import Logo, Paper, PaperSize
from wardwright.documents.writers.pdf import write_pdf
from wardwright.model.place import Place

LETTER_COUNTRIES = frozenset({"US", "CA", "MX", "PH", "CL", "CO", "CR", "GT", "PA", "PR", "SV", "VE"})
"""ISO 3166 codes of countries whose printers hold Letter. (common practice)"""


class Press(NamedTuple):
    """Sets papers on one size with one set of letters."""

    font_folder: str
    size: PaperSize = "a4"
    logo: Logo | None = None
    """The firm's; it stands on what a client gets."""

    def pdf(self, paper: Paper) -> bytes:
        """Set a paper."""
        logo = self.logo if paper.copy == "client" else None
        return write_pdf(paper, font_folder=self.font_folder, size=self.size, logo=logo)


def usual_size(place: Place) -> PaperSize:
    """What is in the printers of a place: by its country, else by its rule pack.

    Examples
    --------
    >>> usual_size(Place(country="CA")), usual_size(Place(country="GB")), usual_size(Place(rule_pack="us"))
    ('letter', 'a4', 'letter')
    """
    if place.country is not None:
        return "letter" if place.country in LETTER_COUNTRIES else "a4"
    return "letter" if place.rule_pack == "us" else "a4"
