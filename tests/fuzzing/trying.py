"""One damaged input, tried with the real command: what came of it, and what is wrong with that."""

from __future__ import annotations

import contextlib
import io
import tempfile
from pathlib import Path
from typing import NamedTuple

from fuzzing.kinds import Kind
from wardwright.cli.command import BAD_INPUT, FINE, MUST_MEND
from wardwright.cli.main import main
from wardwright.errors import InputError
from wardwright.model.wording import is_plain
from wardwright.store.catalogue import load_catalogue
from wardwright.store.sites import read_site

LONGEST_MESSAGE = 1200
"""A message longer than this is no clear one. [letters]"""


class Tried(NamedTuple):
    """What came of an input."""

    status: int
    said: str
    """On the error stream, FILE for the path."""
    wrong: str
    """What is wrong with that; empty where nothing is."""


def tried(kind: Kind, data: bytes, command: tuple[str, ...]) -> Tried:
    """Try one input in a folder of its own, in this process."""
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        file, out = folder / kind.file, folder / "out" / "written"
        file.write_bytes(data)
        out.parent.mkdir()
        paths = {"FILE": str(file), "OUT": str(out)}
        printed, complained = io.StringIO(), io.StringIO()
        with contextlib.redirect_stdout(printed), contextlib.redirect_stderr(complained):
            status = main([paths.get(word, word) for word in command])
        said = complained.getvalue().replace(str(folder), "FOLDER")
        left = sorted(path.relative_to(out.parent).as_posix() for path in out.parent.rglob("*"))
        wrong = _wrong(status, said, printed.getvalue(), left) or _unreadable(command, out, status)
        return Tried(status, said, wrong)


def _wrong(status: int, said: str, printed: str, left: list[str]) -> str:
    if status == BAD_INPUT:
        return _wrong_refusal(said, printed, left)
    if status not in {FINE, MUST_MEND}:
        return f"exit status {status}"
    if said:
        return "something was said on the error stream of a good run"
    if not is_plain(printed.replace("\n", "")):
        return "an answer that a terminal would obey"
    return "" if printed.strip() else "a good run that says nothing"


def _wrong_refusal(said: str, printed: str, left: list[str]) -> str:
    if said.count("\n") != 1 or not said.startswith("wardwright: ") or not said.endswith(".\n"):
        return "not one message"
    if len(said) > LONGEST_MESSAGE:
        return f"a message of {len(said)} letters"
    if not said.rstrip("\n").isprintable():
        return "a message that a terminal would obey"
    if "Traceback" in said or "Warning" in said:
        return "a message for programmers"
    if printed:
        return "printed something, then refused"
    return f"refused, but left behind {', '.join(left)}" if left else ""


def _unreadable(command: tuple[str, ...], out: Path, status: int) -> str:
    """Whatever an intake writes must be read by the next command."""
    if command[0] != "intake" or status != FINE:
        return ""
    try:
        read_site(out, load_catalogue())
    except InputError as fault:
        return f"the document that it wrote is refused: {fault}"
    return ""
