"""What differs between two states of a site, record by record, and carrying such a difference over to a third."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any, NamedTuple, get_args

from wardwright.model.record import Record
from wardwright.model.site import Site


class Change(NamedTuple):
    """One record that differs: the key says which, and there is what it was and what it is."""

    key: str
    """`devices/hall-movement` for a record of a list, `programme` for one of which there is only one."""
    before: Any
    """None: it was not there."""
    after: Any
    """None: it is not there any more."""


def collections() -> frozenset[str]:
    """Names of the site's lists of records that have an id."""
    return frozenset(name for name, field in Site.model_fields.items() if _is_list(field.annotation))


def _is_list(annotation: object) -> bool:
    inner = get_args(annotation)
    return bool(inner) and isinstance(inner[0], type) and issubclass(inner[0], Record)


def differences(before: Site, after: Site) -> tuple[Change, ...]:
    """Every record that differs between two states of a site.

    Parameters
    ----------
    before, after : Site
        The two states.

    Returns
    -------
    tuple of Change
        By key; an order of lists is no difference.

    Examples
    --------
    >>> from wardwright.model.fabric import Storey
    >>> from wardwright.model.programme import Programme
    >>> hut = Site(name="hut", storeys=(Storey(id="ground", name="ground floor", elevation_m=0.0),))
    >>> slower = hut.model_copy(update={"programme": Programme(entry_time_s=40.0)})
    >>> [change.key for change in differences(hut, slower)]
    ['programme']
    """
    found: list[Change] = []
    lists = collections()
    for name in Site.model_fields:
        old, new = getattr(before, name), getattr(after, name)
        if old is new or name == "schema_version":
            continue
        if name not in lists:
            if old != new:
                found.append(Change(name, old, new))
            continue
        olds, news = {one.id: one for one in old}, {one.id: one for one in new}
        found.extend(
            Change(f"{name}/{ident}", olds.get(ident), news.get(ident))
            for ident in olds.keys() | news.keys()
            if olds.get(ident) != news.get(ident)
        )
    return tuple(sorted(found, key=lambda change: change.key))


def carried_out(site: Site, changes: Iterable[Change]) -> Site:
    """A site with the `after` of each change put in place, whatever stood there.

    Parameters
    ----------
    site : Site
        Any state.
    changes : iterable of Change
        What to put in place.

    Returns
    -------
    Site
        A new site that shares what did not change; new records come last in their lists.
    """
    update: dict[str, Any] = {}
    for change in changes:
        name, _, ident = change.key.partition("/")
        if not ident:
            update[name] = change.after
            continue
        records = update.get(name, getattr(site, name))
        kept = [change.after if one.id == ident else one for one in records]
        if change.after is not None and not any(one.id == ident for one in records):
            kept.append(change.after)
        update[name] = tuple(one for one in kept if one is not None)
    return site.model_copy(update=update)


def reverted(changes: Iterable[Change]) -> tuple[Change, ...]:
    """The same changes the other way round."""
    return tuple(Change(change.key, change.after, change.before) for change in changes)
