"""A building file or a drawing read in a process of its own, where time and memory can be limited.

A file from elsewhere may be broken or made to do harm: whatever it does, the program gets one clear message.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
from collections.abc import Callable
from contextlib import AbstractContextManager, nullcontext
from pathlib import Path
from typing import BinaryIO, NamedTuple

from wardwright.errors import IntakeError
from wardwright.intake.report import IntakeReport
from wardwright.model.site import Site
from wardwright.store.children import ran
from wardwright.store.given_files import GivenFile
from wardwright.store.limited_child import OUT_OF_MEMORY

USUAL_SECONDS = 120.0
"""How long a file may take. [s] (assumption: the homes we have take 2 to 4 s)"""
USUAL_MEGABYTES = 2000
"""How much memory it may take, the interpreter with its libraries included. [MB of address space] (assumption)"""
LARGEST_FILE_BYTES = 500_000_000

_BROKEN_BY_CONTENT = frozenset((-4, -8))
"""Signals of an order that the processor cannot follow and of a division by nothing: no want of memory."""
_DAMAGED = "Export the building again; an edited or damaged file often has lines that point nowhere"
_MEMORY_SIGNS = ("bad_alloc", "MemoryError", "failed to map", "Cannot allocate memory")


def read_ifc_limited(
    path: Path | GivenFile,
    premises: str | None = None,
    *,
    seconds: float = USUAL_SECONDS,
    megabytes: int = USUAL_MEGABYTES,
    is_stopped: Callable[[], bool] | None = None,
) -> tuple[Site, IntakeReport]:
    """Read a house from an IFC file in a child process with limits.

    Parameters
    ----------
    path : Path or GivenFile
        The file.
    premises : str or None
        What is ours: names of spaces or zones, or how the names of our spaces begin, parted by commas.
        None: everything.
    seconds : float
        How long it may take. [s]
    megabytes : int
        How much memory it may take, where the system can limit it. [MB]
    is_stopped : callable, optional
        Whether somebody wants no more of it: then the child is ended at once.

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
    Stopped
        If somebody wanted no more of it.
    """
    limits = _Limits(seconds, megabytes, is_stopped)
    return _read_limited(path, ("ifc", premises or ""), limits)


def read_dxf_limited(
    path: Path | GivenFile,
    unit: str | None = None,
    *,
    seconds: float = USUAL_SECONDS,
    megabytes: int = USUAL_MEGABYTES,
    is_stopped: Callable[[], bool] | None = None,
) -> tuple[Site, IntakeReport]:
    """Read a house from a DXF drawing in a child process with limits.

    Parameters
    ----------
    path : Path or GivenFile
        The file.
    unit : str or None
        What one unit of it is; None: it is found out.
    seconds, megabytes, is_stopped
        As for `read_ifc_limited`.

    Returns
    -------
    Site
        The house.
    IntakeReport
        What was read, guessed and left out.

    Raises
    ------
    IntakeError, Stopped
        As for `read_ifc_limited`.
    """
    limits = _Limits(seconds, megabytes, is_stopped)
    return _read_limited(path, ("dxf", unit or ""), limits)


class _Limits(NamedTuple):
    seconds: float
    megabytes: int
    is_stopped: Callable[[], bool] | None


def _read_limited(
    given: Path | GivenFile, how: tuple[str, str], limits: _Limits
) -> tuple[Site, IntakeReport]:
    """Read a file in a child; `how` is its form and what was asked with it."""
    place = ("-m", "wardwright.store.limited_child", given.name, str(limits.megabytes), str(limits.seconds))
    command = [sys.executable, *place, *how]
    # One thread each: every further one reserves address space that the limit would count.
    threads = dict.fromkeys(("OPENBLAS_NUM_THREADS", "OMP_NUM_THREADS", "MKL_NUM_THREADS"), "1")
    try:
        with _opened(given) as content:
            done = ran(
                command,
                content,
                seconds=limits.seconds,
                is_stopped=limits.is_stopped,
                environment={**os.environ, **threads},
            )
    except subprocess.TimeoutExpired:
        raise IntakeError(
            f"reading it took longer than {limits.seconds:g} s and was stopped",
            where=given.name,
            cure="Allow more time, or export only the storeys of the home",
        ) from None
    return _answer(done, given.name, limits.megabytes)


def _opened(given: Path | GivenFile) -> AbstractContextManager[BinaryIO]:
    if isinstance(given, GivenFile):
        given.content.seek(0)
        return nullcontext(given.content)
    try:
        if given.stat().st_size > LARGEST_FILE_BYTES:
            raise too_large(given.name)
        return given.open("rb")
    except OSError as error:
        raise IntakeError(
            f"it cannot be opened ({error.strerror or 'no reason given'})",
            where=str(given),
            cure="Check the path and that the file may be read",
        ) from error


def too_large(name: str) -> IntakeError:
    """What is said of a file that is larger than any that is read."""
    return IntakeError(
        f"it is larger than {LARGEST_FILE_BYTES // 1_000_000} MB",
        where=name,
        cure="Export only the storeys of the home",
    )


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
