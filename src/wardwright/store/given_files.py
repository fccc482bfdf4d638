"""Files that somebody hands in while the program runs: held without a name, and gone with it, whatever ends it."""

from __future__ import annotations

import tempfile
from pathlib import Path
from typing import BinaryIO, NamedTuple

from wardwright.errors import IntakeError


class GivenFile(NamedTuple):
    """A file that was handed in."""

    name: str
    """What it is called where it came from."""
    content: BinaryIO
    """Unbuffered: a child process that is given it reads from where it stands."""

    @property
    def ending(self) -> str:
        """How its name ends, in small letters."""
        return Path(self.name).suffix.lower()

    def text(self, what: str, *, largest_bytes: int) -> str:
        """Its content as text.

        Parameters
        ----------
        what : str
            What it should be, as it stands in messages.
        largest_bytes : int
            How long it may be.

        Returns
        -------
        str
            The text, a mark of byte order at its head taken off.

        Raises
        ------
        IntakeError
            If it is too long, or no text.
        """
        self.content.seek(0)
        data = self.content.read(largest_bytes + 1)
        if len(data) > largest_bytes:
            raise IntakeError(
                f"the {what} is longer than {largest_bytes // 1_000_000} MB",
                where=self.name,
                cure="Give text only; pictures and logs are attached to the job once it is there",
            )
        try:
            text = data.decode("utf-8")
        except UnicodeDecodeError:
            raise IntakeError(
                "this is not text in UTF-8", where=self.name, cure="Save it as UTF-8 text"
            ) from None
        if "\0" in text:
            raise IntakeError("this is not text", where=self.name, cure=f"Give a {what}")
        return text.removeprefix("\ufeff")

    def close(self) -> None:
        """Let it go: nothing of it is left."""
        self.content.close()


class Receiving:
    """A file that comes in piece by piece, up to a size."""

    def __init__(self, name: str, folder: Path, *, largest_bytes: int) -> None:
        # It has no name in the folder and only its owner may read it; a program that is killed leaves none behind.
        self.given = GivenFile(name, tempfile.TemporaryFile(buffering=0, dir=folder))  # noqa: SIM115 - it outlives this call
        self._left = largest_bytes
        self._largest = largest_bytes

    @property
    def size_bytes(self) -> int:
        """How much has come."""
        return self._largest - self._left

    def take(self, piece: bytes) -> None:
        """Take the next piece; IntakeError, and nothing is left of it, if it is too long or finds no room."""
        self._left -= len(piece)
        try:
            if self._left < 0:
                raise longer_than(self.given.name, self._largest)
            while piece:
                piece = piece[self.given.content.write(piece) :]
        except OSError as fault:
            self.given.close()
            raise IntakeError(
                f"it cannot be taken in ({fault.strerror})",
                where=self.given.name,
                cure="Check that the disk has room",
            ) from None
        except IntakeError:
            self.given.close()
            raise


def longer_than(name: str, largest_bytes: int) -> IntakeError:
    """What is said of a file that is longer than it may be."""
    return IntakeError(
        f"it is longer than {largest_bytes // 1_000_000} MB",
        where=name,
        cure="Export only the storeys of the home, or give a part of it",
    )
