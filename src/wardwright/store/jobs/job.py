"""A job: edits that are kept before they count, and undo for ever."""

from __future__ import annotations

import sqlite3
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import lru_cache
from pathlib import Path
from typing import NamedTuple, Self

from wardwright.errors import DocumentError, JobError
from wardwright.model.changes import carried_out, differences, reverted
from wardwright.model.edits import Edit, edited
from wardwright.model.site import Site
from wardwright.store.jobs import revisions
from wardwright.store.jobs.revisions import NewRevision, Revision

RECALLED = 64
"""Sites that are held ready, the last ones asked for. [-]"""


class Kept(NamedTuple):
    """What became of an edit."""

    revision: int
    """The revision that it made, or made when it was sent first."""
    is_new: bool
    """False: it was sent again, or changes nothing."""


class Conflict(NamedTuple):
    """Why an edit was not taken: somebody else changed the same things since."""

    revision: int
    """The newest revision."""
    keys: tuple[str, ...]
    """The things, such as `devices/hall-movement`."""
    by: tuple[str, ...]
    """Who changed them."""


class Job:
    """An open job. Not to be made by hand: `opening` has `new_job` and `open_job`.

    Its methods may be called from several threads; one at a time is let in.
    """

    def __init__(self, base: sqlite3.Connection, path: Path) -> None:
        self.path = path
        self.base = base
        self._lock = threading.RLock()
        self._recalled = lru_cache(maxsize=RECALLED)(self._read)

    def __enter__(self) -> Self:
        """The job itself."""
        return self

    def __exit__(self, *_: object) -> None:
        """Close it."""
        self.close()

    def close(self) -> None:
        """Let the file go."""
        with self._lock:
            self.base.close()

    @property
    def job_id(self) -> str:
        """What it is known by, wherever its file goes."""
        with self._lock:
            (found,) = self.base.execute("SELECT value FROM job WHERE key = 'id'").fetchone()
        return str(found)

    @property
    def newest(self) -> int:
        """The number of the newest revision."""
        with self._lock:
            return revisions.newest(self.base)

    def site(self, revision: int | None = None) -> Site:
        """The site as it was at a revision, as it is now if none is named; JobError if there is no such one."""
        return self._recalled(self.newest if revision is None else revision)

    def _read(self, revision: int) -> Site:
        with self._lock:
            return revisions.read(self.base, revision, where=str(self.path))

    def history(self) -> tuple[Revision, ...]:
        """All revisions, newest first."""
        with self._lock:
            return revisions.history(self.base)

    def edit(
        self, edit: Edit, *, what: str = "", check: Callable[[Site], Site] | None = None
    ) -> Kept | Conflict:
        """Carry an edit out on the newest site, and keep it before it counts.

        Parameters
        ----------
        edit : Edit
            The edit, with the revision that its author saw.
        what : str, default ""
            What it is called in the history.
        check : callable, optional
            Takes the new site and raises where it does not hold together.

        Returns
        -------
        Kept or Conflict
            A conflict if somebody else changed the same things after that revision: then nothing is changed.

        Raises
        ------
        DocumentError
            If the edit cannot be carried out; then nothing is changed.
        """
        with self._lock:
            made = revisions.made_by(self.base, edit.id)
            if made is not None:
                return Kept(made, is_new=False)
            newest = self.newest
            if edit.base > newest:
                raise DocumentError(
                    f"the edit stands on revision {edit.base}, but the newest is {newest}",
                    where="edit",
                    cure="Load the job again",
                )
            old = self.site(newest)
            gone = self._changed_by_others(_named(edit), since=edit.base, author=edit.author)
            if gone is not None:
                return gone
            new = edited(old, edit.operations)
            keys = {change.key for change in differences(old, new)}
            conflict = self._changed_by_others(keys, since=edit.base, author=edit.author)
            if conflict is not None:
                return conflict
            if check is not None:
                new = check(new)
            name = what or ", ".join(dict.fromkeys(one.do for one in edit.operations))
            made_new = NewRevision(newest + 1, edit.id, edit.author, edit.base, name, None, new)
            return self._keep(made_new, keys)

    def undo(self, edit_id: str, author: str) -> Kept | Conflict | None:
        """Take back the newest revision of somebody that is not taken back yet.

        Parameters
        ----------
        edit_id : str
            Names this undoing: sent again it changes nothing.
        author : str
            Whose revision.

        Returns
        -------
        Kept or Conflict or None
            A conflict if somebody else changed the same things since; None if there is nothing to take back.
        """
        with self._lock:
            made = revisions.made_by(self.base, edit_id)
            if made is not None:
                return Kept(made, is_new=False)
            target = revisions.last_to_take_back(self.base, author)
            if target is None:
                return None
            changes = differences(self.site(target - 1), self.site(target))
            keys = {change.key for change in changes}
            conflict = self._changed_by_others(keys, since=target, author=author)
            if conflict is not None:
                return conflict
            newest = self.newest
            site = carried_out(self.site(newest), reverted(changes))
            what = f"took back: {revisions.what_of(self.base, target)}"
            return self._keep(NewRevision(newest + 1, edit_id, author, newest, what, target, site), keys)

    def _changed_by_others(self, keys: set[str], *, since: int, author: str) -> Conflict | None:
        others = revisions.changed_by_others(self.base, keys, since=since, author=author)
        if not others:
            return None
        return Conflict(self.newest, tuple(sorted(others)), tuple(sorted(set(others.values()))))

    def _keep(self, new: NewRevision, keys: set[str]) -> Kept:
        if not keys:
            return Kept(new.number - 1, is_new=False)
        with self.transaction() as base:
            revisions.write(base, new, keys)
        return Kept(new.number, is_new=True)

    @contextmanager
    def reading(self) -> Iterator[sqlite3.Connection]:
        """The file for reading: no transaction is begun, and nobody else is let in meanwhile."""
        with self._lock:
            try:
                yield self.base
            except sqlite3.Error as fault:
                raise JobError(
                    f"the job cannot be read ({fault})",
                    where=str(self.path),
                    cure="Restore a backup of the job",
                ) from None

    @contextmanager
    def transaction(self) -> Iterator[sqlite3.Connection]:
        """One transaction: on the disk when it ends without a fault, else as if it had never begun."""
        with self._lock:
            try:
                self.base.execute("BEGIN IMMEDIATE")
                yield self.base
                self.base.execute("COMMIT")
            except BaseException as fault:
                if self.base.in_transaction:
                    self.base.execute("ROLLBACK")
                if isinstance(fault, sqlite3.Error):
                    raise JobError(
                        f"the edit could not be kept ({fault})",
                        where=str(self.path),
                        cure="Check that the disk has room; nothing was changed",
                    ) from None
                raise


def _named(edit: Edit) -> set[str]:
    """The things that an edit names: gone or changed by somebody else, they are a conflict, not a fault."""
    found: set[str] = set()
    for one in edit.operations:
        said = one.model_dump()
        found |= {f"devices/{said['device']}"} if isinstance(said.get("device"), str) else set()
        found |= {f"walls/{said['wall']}"} if isinstance(said.get("wall"), str) else set()
        found |= {f"{said['of']}/{said['id']}"} if said.get("id") else set()
    return found
