"""One damaged input in a process of its own, with a limit to its time and memory; a crash is an outcome too."""

from __future__ import annotations

import contextlib
import json
import os
import signal
import sys
import tempfile
import time
import traceback
from pathlib import Path
from typing import NamedTuple

from fuzzing.kinds import Kind
from fuzzing.trying import tried

SECONDS = 60
"""Of the processor's time: any of the whole inputs takes a tenth. [s]"""
PATIENCE_S = 600.0
"""On the clock, for a machine that is busy with other things. [s]"""
MEGABYTES = 1500
"""Of memory at most, beside that of whoever asks: the biggest of the whole inputs takes a fifth. [MB]"""


class Outcome(NamedTuple):
    """What came of an input."""

    command: tuple[str, ...]
    status: int
    said: str
    wrong: str
    """Empty where nothing is."""
    seconds: float
    """Of the processor's time."""
    megabytes: float
    """Of memory at most, beside what the process that asked held already."""


def tried_apart(kind: Kind, seed: int) -> Outcome:
    """Try the input of a seed."""
    data, command = kind.made(seed)
    with tempfile.TemporaryDirectory() as name:
        answer, began = Path(name) / "answer.json", Path(name) / "began"
        child = os.fork()
        if child == 0:
            _child(kind, data, command, answer=answer, began=began)
        code, usage = _waited(child)
        # A fork begins with all that its parent holds: a long run of tests holds more than any input takes.
        held = float(began.read_text(encoding="utf-8")) if began.exists() else 0.0
        used = usage[0] + usage[1], usage[2] - held
        try:
            status, said, wrong = json.loads(answer.read_text(encoding="utf-8"))
        except (OSError, ValueError):
            wrong = "took too long" if code in {-signal.SIGXCPU, -signal.SIGKILL} else f"ended with {code}"
            status, said = code, ""
    if not wrong and used[1] > MEGABYTES:
        wrong = f"took {used[1]:.0f} MB"
    return Outcome(command, status, said, wrong, *used)


def _child(kind: Kind, data: bytes, command: tuple[str, ...], *, answer: Path, began: Path) -> None:
    """Try it, write the answer down, and leave without coming back to whoever forked."""
    import resource  # noqa: PLC0415 - not on every system, and nor is os.fork

    resource.setrlimit(resource.RLIMIT_CPU, (SECONDS, SECONDS + 5))
    try:
        began.write_text(str(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1000.0), encoding="utf-8")
        outcome = tried(kind, data, command)
        answer.write_text(json.dumps(outcome), encoding="utf-8")
    except BaseException:  # noqa: BLE001 - whatever it is, it is what came of the input
        said = traceback.format_exc()
        answer.write_text(json.dumps((-1, said, "the trial itself broke")), encoding="utf-8")
    finally:
        sys.stdout.flush()
        os._exit(0)


def _waited(child: int) -> tuple[int, tuple[float, float, float]]:
    """Wait for the child, at most so long; how it ended, its time [s] and its most memory [MB]."""
    end, pause = time.monotonic() + PATIENCE_S, 0.001
    while True:
        found, status, usage = os.wait4(child, os.WNOHANG)
        if found:
            code = os.waitstatus_to_exitcode(status)
            return code, (usage.ru_utime, usage.ru_stime, usage.ru_maxrss / 1000.0)
        if time.monotonic() > end:
            with contextlib.suppress(ProcessLookupError):
                os.kill(child, signal.SIGKILL)
        time.sleep(pause)
        pause = min(0.05, pause * 1.5)
