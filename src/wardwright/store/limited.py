"""A building file or a drawing read in a process of its own, where time and memory can be limited.

A file from elsewhere may be broken or made to do harm: whatever it does, the program gets one clear message.
"""

from __future__ import annotations

import io
import json
import os
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

from wardwright.errors import IntakeError
from wardwright.intake.report import IntakeReport
from wardwright.model.site import Site

USUAL_SECONDS = 120.0
"""How long a file may take. [s] (assumption: the homes we have take 2 to 4 s)"""
USUAL_MEGABYTES = 2000
"""How much memory it may take, the interpreter with its libraries included. [MB of address space] (assumption)"""
LARGEST_FILE_BYTES = 500_000_000
OUT_OF_MEMORY = 70
"""The exit status by which the child says that it ran out of memory."""

_BROKEN_BY_CONTENT = frozenset((-4, -8))
"""Signals of an order that the processor cannot follow and of a division by nothing: no want of memory."""
_DAMAGED = "Export the building again; an edited or damaged file often has lines that point nowhere"
_MEMORY_SIGNS = ("bad_alloc", "MemoryError", "failed to map", "Cannot allocate memory")


def read_ifc_limited(
    path: Path,
    premises: str | None = None,
    *,
    seconds: float = USUAL_SECONDS,
    megabytes: int = USUAL_MEGABYTES,
) -> tuple[Site, IntakeReport]:
    """Read a house from an IFC file in a child process with limits.

    Parameters
    ----------
    path : Path
        The file.
    premises : str or None
        What is ours: names of spaces or zones, or how the names of our spaces begin, parted by commas.
        None: everything.
    seconds : float
        How long it may take. [s]
    megabytes : int
        How much memory it may take, where the system can limit it. [MB]

    Returns
    -------
    Site
        The house.
    IntakeReport
        What was read, guessed and left out.

    Raises
    ------
    IntakeError
        If the file cannot be read, is broken, or takes too long or too much memory.
    """
    return _read_limited(path, ("ifc", premises or ""), seconds=seconds, megabytes=megabytes)


def read_dxf_limited(
    path: Path,
    unit: str | None = None,
    *,
    seconds: float = USUAL_SECONDS,
    megabytes: int = USUAL_MEGABYTES,
) -> tuple[Site, IntakeReport]:
    """Read a house from a DXF drawing in a child process with limits.

    Parameters
    ----------
    path : Path
        The file.
    unit : str or None
        What one unit of it is; None: it is found out.
    seconds : float
        How long it may take. [s]
    megabytes : int
        How much memory it may take, where the system can limit it. [MB]

    Returns
    -------
    Site
        The house.
    IntakeReport
        What was read, guessed and left out.

    Raises
    ------
    IntakeError
        If the file cannot be read, is broken, or takes too long or too much memory.
    """
    return _read_limited(path, ("dxf", unit or ""), seconds=seconds, megabytes=megabytes)


def _read_limited(
    path: Path, how: tuple[str, str], *, seconds: float, megabytes: int
) -> tuple[Site, IntakeReport]:
    """Read a file in a child; `how` is its form and what was asked with it."""
    data = _bytes_of(path)
    command = [sys.executable, "-m", "wardwright.store.limited", path.name, str(megabytes), *how]
    # One thread each: every further one reserves address space that the limit would count.
    threads = dict.fromkeys(("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS"), "1")
    try:
        done = subprocess.run(  # noqa: S603 - our own interpreter, no shell; the file's name is one argument
            command,
            input=data,
            capture_output=True,
            timeout=seconds,
            check=False,
            env={**os.environ, **threads},
        )
    except subprocess.TimeoutExpired:
        raise IntakeError(
            f"reading it took longer than {seconds:g} s and was stopped",
            where=path.name,
            cure="Allow more time, or export only the storeys of the home",
        ) from None
    return _answer(done, path.name, megabytes)


def _bytes_of(path: Path) -> bytes:
    try:
        if path.stat().st_size > LARGEST_FILE_BYTES:
            raise IntakeError(
                f"it is larger than {LARGEST_FILE_BYTES // 1_000_000} MB",
                where=path.name,
                cure="Export only the storeys of the home",
            )
        return path.read_bytes()
    except OSError as error:
        raise IntakeError(
            f"it cannot be opened ({error.strerror or 'no reason given'})",
            where=str(path),
            cure="Check the path and that the file may be read",
        ) from error


def _answer(
    done: subprocess.CompletedProcess[bytes], where: str, megabytes: int
) -> tuple[Site, IntakeReport]:
    if done.returncode == 0:
        answer = json.loads(done.stdout)
        if "error" in answer:
            raise IntakeError(
                answer["error"]["what"], where=answer["error"]["where"], cure=answer["error"]["cure"]
            )
        return Site.model_validate(answer["site"]), IntakeReport.model_validate(answer["report"])
    said = done.stderr.decode("utf-8", "replace")
    if done.returncode == OUT_OF_MEMORY or any(sign in said for sign in _MEMORY_SIGNS):
        raise IntakeError(
            f"reading it took more than {megabytes} MB of memory and was stopped",
            where=where,
            cure="Allow more memory, or export only the storeys of the home",
        )
    if done.returncode in _BROKEN_BY_CONTENT:
        raise IntakeError(
            f"reading it broke the reader (signal {-done.returncode})", where=where, cure=_DAMAGED
        )
    if done.returncode < 0:
        raise IntakeError(
            f"reading it broke the reader (signal {-done.returncode}), or took more than {megabytes} MB of memory",
            where=where,
            cure="Allow more memory, or export the building again",
        )
    last = said.strip().splitlines()[-1] if said.strip() else f"status {done.returncode}"
    raise IntakeError(
        f"reading it ended without an answer ({last[:200]})",
        where=where,
        cure="Export the building again; if it happens again the file holds something that the reader cannot take",
    )


def _limit(megabytes: int) -> None:
    """Limit this process's own memory, where the system can."""
    try:
        import resource  # noqa: PLC0415 - not on every system
    except ImportError:
        return
    most = megabytes * 1_000_000
    _, hard = resource.getrlimit(resource.RLIMIT_AS)
    if hard != resource.RLIM_INFINITY:
        most = min(most, hard)
    resource.setrlimit(resource.RLIMIT_AS, (most, hard))


def _child(where: str, megabytes: int, how: tuple[str, str]) -> int:
    """Read the file given on standard input; write the answer to what was standard output."""
    _limit(megabytes)
    # The library may print: whatever it says goes to standard error, the answer to a copy of standard output.
    answer_to = os.dup(1)
    os.dup2(2, 1)
    try:
        answer = _read(sys.stdin.buffer.read(), where, how)
    except MemoryError:
        return OUT_OF_MEMORY
    with os.fdopen(answer_to, "wb") as out:
        out.write(answer.encode())
    return 0


def _read(data: bytes, where: str, how: tuple[str, str]) -> str:
    form, asked = how
    try:
        site, report = _reader(form)(data, where, asked or None)
    except IntakeError as error:
        return json.dumps({"error": {"what": error.what, "where": error.where, "cure": error.cure}})
    # Each is JSON already: put together as text, so that nothing is turned twice.
    return f'{{"site": {site.model_dump_json(exclude_unset=True)}, "report": {report.model_dump_json()}}}'


def _reader(form: str) -> Callable[[bytes, str, str | None], tuple[Site, IntakeReport]]:
    """What reads a form; only this child knows the libraries of IFC and DXF, and only the one it needs."""
    if form == "ifc":
        from wardwright.intake.ifc.reading import read_ifc  # noqa: PLC0415 - see above

        return lambda data, where, asked: read_ifc(data, where=where, premises=asked)
    from wardwright.intake.dxf.reading import read_dxf  # noqa: PLC0415 - see above

    return lambda data, where, asked: read_dxf(io.BytesIO(data), where=where, unit=asked)


if __name__ == "__main__":
    sys.exit(_child(sys.argv[1], int(sys.argv[2]), (sys.argv[3], sys.argv[4])))
