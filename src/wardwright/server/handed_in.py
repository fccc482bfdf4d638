"""Files that the page handed in, held until a house is made of them."""

from __future__ import annotations

import threading
from pathlib import Path
from uuid import uuid4

from wardwright.errors import IntakeError
from wardwright.store.given_files import GivenFile

HELD = 8
"""How many are held; the oldest makes room. [-] (assumption)"""


class HandedInFiles:
    """Files by id. What is taken out belongs to whoever took it, who puts it back or closes it."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        """The disk on which they are held: where the jobs are, there is room for a house."""
        self._files: dict[str, GivenFile] = {}
        self._lock = threading.Lock()

    def put(self, given: GivenFile, ident: str = "") -> str:
        """Hold a file; its id, a new one if it had none."""
        ident = ident or uuid4().hex
        with self._lock:
            self._files[ident] = given
            for old in list(self._files)[:-HELD]:
                self._files.pop(old).close()
        return ident

    def take(self, ident: str) -> GivenFile:
        """Take a file out; IntakeError if there is none of that id."""
        with self._lock:
            given = self._files.pop(ident, None)
        if given is None:
            raise IntakeError(
                "the file is not here any more, or is being read", where="file", cure="Choose it again"
            )
        return given

    def drop(self, ident: str) -> None:
        """Let a file go, if it is there."""
        with self._lock:
            given = self._files.pop(ident, None)
        if given is not None:
            given.close()

    def close(self) -> None:
        """Let all go."""
        for ident in tuple(self._files):
            self.drop(ident)
