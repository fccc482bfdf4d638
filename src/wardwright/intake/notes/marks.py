"""How each fact that notes bring in is known: told, unless the line says otherwise or it was filled in."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import TypeVar

from wardwright.intake.notes.clauses import Clauses
from wardwright.model.record import Basis, Marked


def marks(
    clauses: Clauses, told: Iterable[str], *, guessed: Iterable[str] = ()
) -> tuple[tuple[str, Basis], ...]:
    """The marks of a record made from a line: what it tells is told unless it says otherwise.

    Parameters
    ----------
    clauses : Clauses
        The line's clauses, which may hold `measured` or `guessed`.
    told : iterable of str
        Fields whose figures the line gives.
    guessed : iterable of str
        Fields that were filled in for it.

    Returns
    -------
    tuple of pairs
        Field and basis, for every field that is not simply told.
    """
    known: dict[str, Basis] = {}
    if clauses.is_measured or clauses.is_guessed:
        known.update(dict.fromkeys(told, "measured" if clauses.is_measured else "guessed"))
    known.update(dict.fromkeys(guessed, "guessed"))
    return tuple(sorted(known.items()))


Changed = TypeVar("Changed", bound=Marked)


def changed(record: Changed, changes: Mapping[str, object], clauses: Clauses) -> Changed:
    """A record with some fields changed by a line, their marks with them."""
    told = [key for key in changes if key not in ("id", "name")]
    kept = tuple((key, basis) for key, basis in record.basis if key not in changes)
    basis = tuple(sorted({**dict(kept), **dict(marks(clauses, told))}.items()))
    fields = {key: getattr(record, key) for key in record.model_fields_set}
    return type(record).model_validate(
        {**fields, **changes, **({"basis": basis} if basis else {"basis": ()})}
    )
