"""Ids that are given twice, references to nothing, and basis marks of no field."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.consistency.problem import Place, Problem, Register
from wardwright.model.record import Marked, Record
from wardwright.model.site import Site
from wardwright.model.wording import holds_secret, is_plain, label, suggestion

_LISTS = (
    "storeys", "spaces", "walls", "openings", "open_edges", "stairs", "fixtures", "outlets", "people", "pets",
    "targets", "devices", "zones", "parts", "behaviours", "readings",
)  # fmt: skip


def places(site: Site, *list_names: str) -> Iterator[Place]:
    """The entries of some of a site's lists; of all its lists when none is named."""
    for name in list_names or _LISTS:
        entries: tuple[Record, ...] = getattr(site, name)
        for index, entry in enumerate(entries):
            yield Place(name, index, entry)
    if not list_names:
        for index, thing in enumerate(site.ground.things):
            yield Place("ground.things", index, thing)


def secrets(book: Register) -> Iterator[Problem]:
    """Names that look as if they held a code; the code itself is never repeated."""
    cure = "Take the code out: a site document never holds one"
    if holds_secret(book.site.name):
        yield Problem("the site's name looks as if it held a code", "the document", cure)
    for place in places(book.site):
        for field in ("name", "id"):
            if holds_secret(str(getattr(place.entry, field, ""))):
                where = f"{place.list_name}[{place.position}]"
                yield Problem(f"'{field}' looks as if it held a code", where, cure)


def unprintable(book: Register) -> Iterator[Problem]:
    """Names with letters that a terminal or a page would obey, or cannot show."""
    cure = "Write it with letters, digits and signs that can be seen"
    if not is_plain(book.site.name):
        yield Problem("the site's name holds a sign that cannot be shown", "the document", cure)
    for place in places(book.site):
        if not is_plain(str(getattr(place.entry, "name", ""))):
            yield place.problem("'name' holds a sign that cannot be shown", cure)


def identities(book: Register) -> Iterator[Problem]:
    """Ids given twice, in one list or across lists."""
    first: dict[str, Place] = {}
    for place in places(book.site):
        before = first.setdefault(place.ident, place)
        if before is not place:
            yield place.problem(
                f"the id '{place.ident}' is already that of "
                + label(before.list_name, before.position, before.entry),
                "Give one of the two another id",
            )


def bases(book: Register) -> Iterator[Problem]:
    """Marks of how a field is known that belong to no field, or to one that is left out."""
    for place in (
        *places(book.site),
        Place("place", 0, book.site.place),
        Place("ground", 0, book.site.ground),
        Place("programme", 0, book.site.programme),
    ):
        entry = place.entry
        if not isinstance(entry, Marked):
            continue
        fields = type(entry).model_fields
        for name, basis in entry.basis:
            if name not in fields:
                near = suggestion(name, list(fields))
                hint = f"; did you mean '{near}'" if near else ""
                yield place.problem(
                    f"'basis' names '{name}', which is no key of it{hint}", "Name a key that it has"
                )
            elif name not in entry.model_fields_set and basis != "default":
                yield place.problem(
                    f"'basis' calls '{name}' {basis}, but '{name}' is left out",
                    f"Write '{name}', or take it out of 'basis'",
                    weight="noted",
                )


_REFERENCES: tuple[tuple[str, str, str, str], ...] = (
    # list, key, what it names, the list that holds those
    ("spaces", "storey", "storey", "storeys"),
    ("walls", "storey", "storey", "storeys"),
    ("openings", "wall", "wall", "walls"),
    ("openings", "joins", "space", "spaces"),
    ("open_edges", "spaces", "space", "spaces"),
    ("stairs", "lower", "storey", "storeys"),
    ("stairs", "upper", "storey", "storeys"),
    ("fixtures", "storey", "storey", "storeys"),
    ("outlets", "storey", "storey", "storeys"),
    ("people", "bed", "space", "spaces"),
    ("pets", "spaces", "space", "spaces"),
    ("targets", "space", "space", "spaces"),
    ("zones", "devices", "device", "devices"),
    ("zones", "behaviour", "behaviour", "behaviours"),
    ("zones", "behaviour_part_set", "behaviour", "behaviours"),
    ("zones", "parts", "part", "parts"),
    ("readings", "device", "device", "devices"),
    ("readings", "receiver", "device", "devices"),
)
_MOUNT_REFERENCES = (
    ("wall", "wall", "walls"),
    ("opening", "opening", "openings"),
    ("storey", "storey", "storeys"),
)


def references(book: Register) -> Iterator[Problem]:
    """Keys that name something that is not there."""
    site = book.site
    known = {name: {p.ident for p in places(site, name)} for name in _LISTS}
    for list_name, key, kind, holder in _REFERENCES:
        for place in places(site, list_name):
            value = getattr(place.entry, key)
            for wanted in value if isinstance(value, tuple) else (value,):
                if wanted is not None and wanted not in known[holder]:
                    yield place.dangling(key, kind=kind, wanted=wanted, known=sorted(known[holder]))
    for place, device in zip(places(site, "devices"), site.devices, strict=True):
        for key, kind, holder in _MOUNT_REFERENCES:
            wanted = getattr(device.mount, key, None)
            if wanted is not None and wanted not in known[holder]:
                yield place.dangling(f"mount.{key}", kind=kind, wanted=wanted, known=sorted(known[holder]))
    yield from _catalogue_references(book)


def _catalogue_references(book: Register) -> Iterator[Problem]:
    if book.catalogue is None:
        return
    for list_name, key, kind, rows in (
        ("walls", "construction", "construction", book.catalogue.constructions),
        ("openings", "glazing", "glazing", book.catalogue.glazings),
        ("devices", "sheet", "device sheet", book.catalogue.sheets),
    ):
        names = [row.id for row in rows]
        for place in places(book.site, list_name):
            wanted = getattr(place.entry, key)
            if wanted is not None and wanted not in names:
                yield place.dangling(key, kind=kind, wanted=wanted, known=names)
