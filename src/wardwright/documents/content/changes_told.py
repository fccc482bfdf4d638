"""What changed in a house between two states, thing by thing, in words."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date
from typing import Literal

from wardwright.documents.content.mends import SMALL_M, field_words
from wardwright.documents.content.names import Names, names_of, toward
from wardwright.documents.content.quantities import joined, number, quantity
from wardwright.documents.content.schedule import mount_words
from wardwright.documents.content.wording import SINGLES, THINGS
from wardwright.model.catalogue import Catalogue
from wardwright.model.changes import Change, differences
from wardwright.model.device import Device
from wardwright.model.record import Marked, Record
from wardwright.model.site import Site
from wardwright.questions.compared import moved

PLACED = frozenset({"wall", "side", "offset_m", "at_m", "storey", "on", "opening"})
"""Fields of a mount that say where it is: told together, as how far it moved."""
SHAPES = frozenset({"line_m", "outline_m", "corners_m", "bounds_m", "footprint_m"})
"""Fields that hold coordinates: that they are others is all that is told."""
SHAPE = "shape or place on the plan"
FINE_M = 0.01
"""What lengths are told to. [m]"""


class ToldChange(Record):
    """One thing that is another than it was."""

    thing: str
    of: str
    """The kind of thing; empty where there is only one."""
    course: Literal["new", "gone", "changed"]
    what: tuple[str, ...]
    """What is another, piece by piece; empty where it is new or gone."""


def told_changes(before: Site, after: Site, catalogue: Catalogue) -> tuple[ToldChange, ...]:
    """Tell what differs between two states of a house.

    Parameters
    ----------
    before, after : Site
        The two states.
    catalogue : Catalogue
        For the names of device sheets.

    Returns
    -------
    tuple of ToldChange
        In the order of the site's lists; empty where nothing differs.
    """
    old, new = names_of(before, catalogue), names_of(after, catalogue)
    names = Names({**old.by_id, **new.by_id}, after)
    far = moved(before, after)
    return tuple(_told(one, before, after, names=names, far=far) for one in differences(before, after))


def _told(change: Change, before: Site, after: Site, *, names: Names, far: Mapping[str, float]) -> ToldChange:
    name, _, ident = change.key.partition("/")
    course: Literal["new", "gone", "changed"] = (
        "new" if ident and change.before is None else "gone" if ident and change.after is None else "changed"
    )
    what: tuple[str, ...] = ()
    if course == "changed":
        what = tuple(_pieces(change.before, change.after, names))
        if isinstance(change.before, Device):
            what = (*_moves((before, after), ident, far=far.get(ident)), *what)
    thing = names.of(ident) if ident else SINGLES.get(name, name)
    return ToldChange(thing=thing, of=THINGS.get(name, name) if ident else "", course=course, what=what)


def _moves(sites: tuple[Site, Site], ident: str, *, far: float | None) -> Iterable[str]:
    old, new = (site.device(ident) for site in sites)
    was, now = mount_words(sites[0], old.mount), mount_words(sites[1], new.mount)
    if was != now:
        yield f"on {now}, before on {was}"
    elif far is not None:
        yield f"moved {quantity(far, 'm', FINE_M)} on the plan"
    elif _where(old) != _where(new):
        yield "moved to another storey or side"


def _where(device: Device) -> tuple[object, ...]:
    return tuple(getattr(device.mount, name, None) for name in sorted(PLACED))


def _pieces(old: object, new: object, names: Names) -> Iterable[str]:
    """Each field that differs, with its value now and before."""
    if not isinstance(old, Record) or not isinstance(new, Record):
        yield f"{_words(new, 'name', names)}, before {_words(old, 'name', names)}"
        return
    # One kind of mount for another: what both hold is told, where it is was told before.
    for name in (one for one in type(new).model_fields if one in type(old).model_fields):
        was, now = getattr(old, name), getattr(new, name)
        if was == now or name in PLACED or name == "basis":
            continue
        if isinstance(was, Record) and isinstance(now, Record):
            yield from _pieces(was, now, names)
        elif name in SHAPES:
            yield SHAPE
        elif was is None and isinstance(now, Record):
            yield f"{_called(name)} decided, before not"
        elif _has_records(was) or _has_records(now):
            yield f"{_called(name)} changed"
        else:
            yield f"{_called(name)} {_words(now, name, names)}, before {_words(was, name, names)}"
    if isinstance(old, Marked) and isinstance(new, Marked):
        yield from _known_otherwise(old, new)


def _known_otherwise(old: Marked, new: Marked) -> Iterable[str]:
    for name in type(old).model_fields:
        known, before = new.basis_of(name), old.basis_of(name)
        if name != "basis" and known != before and getattr(old, name) == getattr(new, name):
            yield f"{_called(name)} is {known}, before {before}"


def _called(name: str) -> str:
    return field_words(name)[0].rstrip(":,")


def _has_records(value: object) -> bool:
    if isinstance(value, tuple):
        return any(isinstance(one, tuple | Record) for one in value)
    return isinstance(value, Record)


def _words(value: object, name: str, names: Names) -> str:
    """A value for people; what is not there is not decided."""
    if value is None:
        return "not decided"
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, int | float):
        return _number_words(float(value), name)
    if isinstance(value, tuple):
        return joined([_words(one, name, names) for one in value]) or "none"
    return value.isoformat() if isinstance(value, date) else names.of(str(value))


def _number_words(value: float, name: str) -> str:
    unit = field_words(name)[1]
    if name == "heading_deg":
        return f"{toward(value)} on the plan ({quantity(value, 'deg', 1.0)})"
    if unit == "m" and abs(value) < SMALL_M:
        return quantity(value * 1000.0, "mm", 1.0)
    fine = FINE_M if unit == "m" else 1.0 if value.is_integer() else 0.1
    return quantity(value, unit, fine) if unit else number(value, fine)
