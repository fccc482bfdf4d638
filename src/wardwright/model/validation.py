"""Whether a site holds together: what is wrong, where, and what to do about it."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from wardwright.errors import DocumentError
from wardwright.model.catalogue import Catalogue
from wardwright.model.consistency.contents import contents, extent
from wardwright.model.consistency.devices import devices
from wardwright.model.consistency.fabric import open_edges, spaces, stairs, storeys, walls
from wardwright.model.consistency.identity import bases, identities, references, secrets, unprintable
from wardwright.model.consistency.openings import openings
from wardwright.model.consistency.problem import Problem, Register, Weight, register
from wardwright.model.consistency.programme import programme
from wardwright.model.site import Site
from wardwright.model.wording import and_more

__all__ = ["Problem", "Weight", "problems", "sound"]

_Check = Callable[[Register], Iterator[Problem]]
_BY_WORD: tuple[_Check, ...] = (secrets, unprintable, identities, references, bases)
"""Those that look at words only, in the order in which they are reported."""
_BY_MEASURE: tuple[_Check, ...] = (
    storeys,
    spaces,
    walls,
    open_edges,
    stairs,
    openings,
    devices,
    programme,
    contents,
)
"""Those that measure, in the order in which they are reported."""


def problems(site: Site, catalogue: Catalogue | None = None) -> tuple[Problem, ...]:
    """Everything in a site that does not fit together.

    Parameters
    ----------
    site : Site
        The site.
    catalogue : Catalogue, optional
        With it, the rows that the site names are looked up, and the devices are held against their sheets.

    Returns
    -------
    tuple of Problem
        Those that stop an answer first, then those that are only noted; each in the order of subjects.
    """
    book = register(site, catalogue)
    found = [problem for check in _BY_WORD for problem in check(book)]
    far = tuple(extent(book))
    # A house in millimetres, or of endless numbers, would only drown its own cause in what follows from it.
    found += far or [problem for check in _BY_MEASURE for problem in check(book)]
    return tuple(sorted(found, key=lambda problem: problem.weight != "stops"))


def sound(site: Site, *, where: str, catalogue: Catalogue | None = None) -> Site:
    """The site itself, if nothing in it stops an answer.

    Parameters
    ----------
    site : Site
        The site.
    where : str
        What its document is called in messages.
    catalogue : Catalogue, optional
        As for `problems`.

    Returns
    -------
    Site
        The same site.

    Raises
    ------
    DocumentError
        Naming the first problem that stops an answer, and how many more there are.
    """
    stopping = [problem for problem in problems(site, catalogue) if problem.weight == "stops"]
    if stopping:
        first = stopping[0]
        place = where if first.where == "the document" else f"{where}, {first.where}"
        raise DocumentError(first.what + and_more(len(stopping) - 1), where=place, cure=first.cure)
    return site
