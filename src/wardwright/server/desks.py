"""The jobs of one folder: which there are, and those that are open."""

from __future__ import annotations

import re
import threading
from pathlib import Path, PurePath

from wardwright.errors import InputError, JobError
from wardwright.intake.notes.secrets import holds_code
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.model.validation import sound
from wardwright.server.desk import Desk
from wardwright.server.messages import JobLine
from wardwright.store.jobs.files import ENDING
from wardwright.store.jobs.opening import open_job

NAME = re.compile(r"[^/\\\x00]{1,120}" + re.escape(ENDING))
"""A file of the folder itself: no path leads out of it."""
FORBIDDEN = re.compile(r"[/\\\x00-\x1f:*?\"<>|]+")
"""What some disk would not have in a name."""
LONGEST_STEM = 80
"""Letters of a new job's name. [-] (assumption)"""


class Desks:
    """The open jobs of one folder."""

    def __init__(self, folder: Path, catalogue: Catalogue) -> None:
        self.folder = folder
        self.catalogue = catalogue
        self._open: dict[str, Desk] = {}
        self._lock = threading.Lock()

    def path_of(self, file: str) -> Path:
        """Where a job of the folder is; InputError if the name leads elsewhere."""
        if not NAME.fullmatch(file) or file.startswith("."):
            raise InputError(
                f"'{file[:60]}' is no name of a job",
                where="job",
                cure=f"Give a plain file name that ends in {ENDING}",
            )
        return self.folder / file

    def free_name(self, given: str) -> str:
        """A name for a new job after the file that it is made of, such as `mill-2.job`.

        Parameters
        ----------
        given : str
            The name of that file.

        Returns
        -------
        str
            No job of the folder has it; a file's name that looks as if it held a code is not taken over.
        """
        stem = FORBIDDEN.sub("-", PurePath(given).stem).strip(". ")[:LONGEST_STEM]
        stem = "house" if not stem or holds_code(stem) else stem
        name, number = f"{stem}{ENDING}", 1
        while (self.folder / name).exists():
            number += 1
            name = f"{stem}-{number}{ENDING}"
        return name

    def desk(self, file: str) -> Desk:
        """The open job of a name; it is opened if it is not."""
        path = self.path_of(file)
        with self._lock:
            if file not in self._open:
                self._open[file] = Desk(open_job(path), self.catalogue)
            return self._open[file]

    def checked(self, site: Site) -> Site:
        """The site, if it holds together."""
        return sound(site, where="the document", catalogue=self.catalogue)

    def lines(self) -> tuple[JobLine, ...]:
        """All jobs of the folder, by name."""
        return tuple(self._line(path) for path in sorted(self.folder.glob(f"*{ENDING}")))

    def _line(self, path: Path) -> JobLine:
        try:
            job = self.desk(path.name).job
            return JobLine(file=path.name, name=job.site().name, revision=job.newest, fault="")
        except JobError as fault:
            return JobLine(file=path.name, name="", revision=0, fault=fault.what)

    def close(self) -> None:
        """Let all files go."""
        with self._lock:
            for desk in self._open.values():
                desk.job.close()
            self._open.clear()
