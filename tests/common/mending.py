"""A mend carried out as the program does it; one that only a person can carry out is an error of the test."""

from __future__ import annotations

from common.houses import CATALOGUE
from wardwright.model.edits import edited
from wardwright.model.site import Site
from wardwright.rules.finding import Mend
from wardwright.rules.mending import operations_of


def mended(site: Site, mend: Mend) -> Site:
    """The site with one mend carried out."""
    operations = operations_of(site, CATALOGUE, mend)
    assert operations is not None, mend
    return edited(site, operations)
