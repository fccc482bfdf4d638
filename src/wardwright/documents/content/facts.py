"""How the facts of a site are known, and the figures that the answers stand on."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from wardwright.documents.content.quantities import number
from wardwright.documents.content.wording import FIELDS, MARKS, THINGS
from wardwright.model.catalogue import Catalogue
from wardwright.model.record import BASES, Basis, Marked
from wardwright.model.site import Site

NAMED_AT_MOST = 6
"""How many things are named before the rest is counted. [-]"""
NOT_FACTS = frozenset({"id", "name", "basis", "storey"})


@dataclass(frozen=True, slots=True)
class BasisRow:
    """How many facts of one kind of thing are known in which way."""

    things: str
    count: int
    by_basis: tuple[int, ...]
    """In the order measured, told, guessed, default."""


@dataclass(frozen=True, slots=True)
class FigureRow:
    """One figure that the answers stand on."""

    name: str
    value: str
    range: str
    unit: str
    source: str
    """Empty for a value of our own."""
    mark: str


def basis_rows(site: Site) -> tuple[BasisRow, ...]:
    """Count the facts of a site by how they are known, one row for each kind of thing it has."""
    rows = []
    for field, words in THINGS.items():
        things: tuple[Marked, ...] = getattr(site, field)
        if not things:
            continue
        counts: Counter[Basis] = Counter(
            thing.basis_of(name)
            for thing in things
            for name in type(thing).model_fields
            if name not in NOT_FACTS
        )
        rows.append(BasisRow(words, len(things), tuple(counts[basis] for basis in BASES)))
    return tuple(rows)


def guessed_facts(site: Site) -> tuple[str, ...]:
    """What was guessed, grouped by kind and field, with the names of the things."""
    found: list[str] = []
    for field, words in THINGS.items():
        grouped: dict[str, list[str]] = {}
        things: tuple[Marked, ...] = getattr(site, field)
        for thing in things:
            for name, basis in thing.basis:
                if basis == "guessed":
                    grouped.setdefault(name, []).append(str(getattr(thing, "name", getattr(thing, "id", ""))))
        for name, whose in sorted(grouped.items()):
            shown = ", ".join(whose[:NAMED_AT_MOST])
            more = f" and {len(whose) - NAMED_AT_MOST} more" if len(whose) > NAMED_AT_MOST else ""
            found.append(f"{_field(name)} of {len(whose)} of {len(things)} {words}: {shown}{more}")
    return tuple(found)


def _field(name: str) -> str:
    if name in FIELDS:
        return FIELDS[name].rstrip(",")
    return name.removesuffix("_m").removesuffix("_deg").removesuffix("_s").replace("_", " ")


def figure_rows(catalogue: Catalogue, *, used: frozenset[str]) -> tuple[FigureRow, ...]:
    """The uncertain figures that answers stand on, by their ids, each with range, source and mark."""
    titles = {source.id: f"{source.title}, {source.edition}".rstrip(", ") for source in catalogue.sources}
    return tuple(
        FigureRow(
            row.name,
            _plain(row.value),
            f"{_plain(row.low)} to {_plain(row.high)}",
            "" if row.unit == "-" else row.unit,
            "" if row.source == "own" else titles.get(row.source, row.source),
            MARKS[row.mark],
        )
        for row in catalogue.figures
        if row.id in used
    )


def _plain(value: float) -> str:
    return number(value, 1.0) if value == round(value) else f"{value:g}"
