"""No acknowledged edit is lost: killed at any moment, or the power gone before any write was on the disk."""

from __future__ import annotations

import os
import random
import re
import shutil
import signal
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import pytest

from wardwright.model.edits import Edit
from wardwright.store.jobs.job import Kept
from wardwright.store.jobs.opening import new_job, open_job
from wardwright.store.samples import read_sample

IS_PROVING = os.environ.get("WARDWRIGHT_PROVE") == "1"
KILLS = 1000 if IS_PROVING else 20
EDITS_OF_A_LOG = 40 if IS_PROVING else 8
SEED = 20

ACKNOWLEDGED = "standard output"
FOLDER = "home"
"""Whose sync makes it certain which files are there."""

EDITOR = """
import os, sys
from pathlib import Path
from wardwright.model.edits import Edit
from wardwright.store.jobs.opening import open_job

def say(words):
    # In one piece: where output is not buffered, print may be killed between a number and the end of its line.
    os.write(1, f"{words}\\n".encode())

def edited(path, count):
    with open_job(path) as job:
        for number in range(job.newest, job.newest + count):
            edit = {"do": "turn-device", "device": "hall-movement", "heading_deg": number % 360 + 0.5}
            kept = job.edit(Edit.model_validate(
                {"id": f"edit-{number:06d}", "author": "me", "base": number, "operations": [edit]}))
            say(kept.revision)
"""
ONE_JOB = "edited(Path(sys.argv[1]), int(sys.argv[2]))"
A_CHILD_EACH = """
for line in sys.stdin:
    child = os.fork()
    if not child:
        say(f"editing in {os.getpid()}")
        edited(Path(line.rstrip()), 100_000)
        os._exit(0)
    say(f"ended by {-os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])}")
"""
"""Edits each job of which it is told in a process of its own, split off when all is imported: it is the edits that
are to be cut short, and a thousand starts of the interpreter would take a quarter of an hour."""


def editor(path: Path, count: int, *before: str) -> subprocess.Popen[str]:
    command = [*before, sys.executable, "-c", EDITOR + ONE_JOB, str(path), str(count)]
    return subprocess.Popen(command, stdout=subprocess.PIPE, text=True)


def killed_after(wait_s: float, path: Path, *, editors: subprocess.Popen[str]) -> int:
    """Have a job edited and kill the editor some time after its first edit; the last revision acknowledged."""
    assert editors.stdin is not None
    assert editors.stdout is not None
    editors.stdin.write(f"{path}\n")
    editors.stdin.flush()
    child = int(editors.stdout.readline().removeprefix("editing in"))
    said = [editors.stdout.readline()]
    time.sleep(wait_s)
    os.kill(child, signal.SIGKILL)
    while said[-1] and not said[-1].startswith("ended by"):
        said.append(editors.stdout.readline())
    assert said[-1] == f"ended by {int(signal.SIGKILL)}\n"
    return max(int(line) for line in said[:-1])


def is_whole(path: Path, acknowledged: int) -> int:
    """The newest revision of a file that must open, be whole, and hold all that was acknowledged."""
    with open_job(path) as job:
        newest = job.newest
        assert newest >= acknowledged, f"revision {acknowledged} was acknowledged, {newest} is the newest"
        assert newest <= acknowledged + 1
        heading = job.site().device("hall-movement").heading_deg
        if newest > 1:
            assert heading == (newest - 1) % 360 + 0.5
        kept = job.edit(
            Edit.model_validate(
                {
                    "id": "edit-after-all",
                    "author": "me",
                    "base": newest,
                    "operations": [{"do": "turn-device", "device": "hall-movement", "heading_deg": 359.0}],
                }
            )
        )
        assert kept == Kept(newest + 1, is_new=True)
    return newest


def test_killed_at_any_moment_no_acknowledged_edit_is_lost(tmp_path: Path) -> None:
    draw = random.Random(SEED)  # noqa: S311 - moments for a test, not a secret
    fresh = tmp_path / "fresh.job"
    new_job(fresh, read_sample("terrace"), author="me").close()
    command = [sys.executable, "-c", EDITOR + A_CHILD_EACH]
    with subprocess.Popen(command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True) as editors:
        for number in range(KILLS):
            path = tmp_path / f"{number}.job"
            shutil.copy(fresh, path)
            is_whole(path, killed_after(draw.uniform(0.0, 0.05), path, editors=editors))
            path.unlink()


class Write(NamedTuple):
    """One step of the log: bytes into a file, a file cut or gone, or all of a file on the disk."""

    what: str
    file: str
    offset: int = 0
    content: bytes = b""


CALL = re.compile(r"^(?:\d+\s+)?(\w+)\((.*)\)\s+=\s+(-?\d+)")


def log_of(lines: Iterator[str], folder: Path) -> list[Write | int]:
    """The writes to the job and its journal, in order; numbers are acknowledgements."""
    names: dict[str, str] = {"1": ACKNOWLEDGED}
    found: list[Write | int] = []
    for line in lines:
        match = CALL.match(line)
        if match is None or match[3].startswith("-"):
            continue
        call, rest, result = match.groups()
        if call == "openat":
            names[result] = plain(rest).decode()
        elif call in ("unlink", "unlinkat"):
            found.append(Write("gone", Path(plain(rest).decode()).name))
        else:
            file = names.get(rest.partition(",")[0], "")
            if file.startswith(str(folder)) or file == ACKNOWLEDGED:
                found.extend(step_of(call, rest, file=Path(file).name))
    return found


def step_of(call: str, rest: str, *, file: str) -> Iterator[Write | int]:
    """What one call does to a file."""
    if file == ACKNOWLEDGED:
        if plain(rest).strip().isdigit():
            yield int(plain(rest))
    elif call == "pwrite64":
        content, (length, offset) = plain(rest), (int(text) for text in rest.split(", ")[-2:])
        assert len(content) == length
        yield Write("write", file, offset, content)
    elif call in ("fsync", "fdatasync"):
        yield Write("synced", file)
    elif call == "ftruncate":
        yield Write("cut", file, int(rest.rpartition(",")[2]))


def plain(rest: str) -> bytes:
    """The first text of a call, which the log writes in hexadecimal."""
    shown = re.search(r'"([^"]*)"', rest)
    return b"" if shown is None else bytes.fromhex(shown[1].replace("\\x", ""))


def test_with_the_power_gone_before_any_sync_no_acknowledged_edit_is_lost(tmp_path: Path) -> None:
    tracer = shutil.which("strace")
    if tracer is None:
        pytest.skip("no strace on this machine: the writes cannot be watched")
    home = tmp_path / FOLDER
    home.mkdir()
    path, log = home / "a.job", tmp_path / "log"
    new_job(path, read_sample("terrace"), author="me").close()
    before = path.read_bytes()
    calls = "openat,write,pwrite64,fsync,fdatasync,ftruncate,unlink,unlinkat"
    process = editor(
        path, EDITS_OF_A_LOG, tracer, "-f", "-xx", "-s", "1000000", "-e", f"trace={calls}", "-o", str(log)
    )
    process.communicate()
    assert process.returncode == 0
    with log.open() as lines:
        steps = log_of(iter(lines), home)
    syncs = [i for i, step in enumerate(steps) if isinstance(step, Write) and step.what in ("synced", "gone")]
    assert len(syncs) > 3 * EDITS_OF_A_LOG
    draw = random.Random(SEED)  # noqa: S311 - as above
    for sync in syncs:
        for manner in ("all lost", "some lost", "none lost"):
            state = replayed(steps[:sync], {"a.job": before}, manner=manner, draw=draw)
            there = tmp_path / "there"
            shutil.rmtree(there, ignore_errors=True)
            there.mkdir()
            for name, content in state.items():
                (there / name).write_bytes(content)
            acknowledged = max((step for step in steps[:sync] if isinstance(step, int)), default=1)
            is_whole(there / "a.job", acknowledged)


def replayed(
    steps: list[Write | int], start: dict[str, bytes], *, manner: str, draw: random.Random
) -> dict[str, bytes]:
    """What is on the disk after some steps, if what was not synced is lost: whole, in part, or not at all."""
    safe = {name: bytearray(content) for name, content in start.items()}
    waiting: dict[str, list[Write]] = {}
    for step in steps:
        if isinstance(step, int):
            continue
        if step.what == "synced":
            for one in waiting.pop(step.file, []):
                carry_out(safe, one)
            for pending in waiting.values() if step.file == FOLDER else ():
                for one in [one for one in pending if one.what == "gone"]:
                    carry_out(safe, one)
                    pending.remove(one)
        else:
            waiting.setdefault(step.file, []).append(step)
    for pending in waiting.values():
        for one in pending:
            if manner == "none lost" or (manner == "some lost" and draw.random() < 0.5):
                carry_out(safe, one)
    return {name: bytes(content) for name, content in safe.items()}


def carry_out(disk: dict[str, bytearray], step: Write) -> None:
    if step.what == "gone":
        disk.pop(step.file, None)
        return
    content = disk.setdefault(step.file, bytearray())
    if step.what == "cut":
        del content[step.offset :]
        content.extend(bytes(max(0, step.offset - len(content))))
        return
    content.extend(bytes(max(0, step.offset + len(step.content) - len(content))))
    content[step.offset : step.offset + len(step.content)] = step.content
