#!/usr/bin/env python3
"""Sets everything up and runs the program, its tests or its proofs.

    python3 dev.py demo             the main job on a sample house
    python3 dev.py test             every check: style, types, layers, spelling, tests
    python3 dev.py test ARGS...     the tests alone, ARGS handed on to pytest
    python3 dev.py prove            the long runs; writes docs/accuracy.md, benchmarks.md and given-houses.md
    python3 dev.py prove --fuzz-minutes 5     the same; damaged inputs are tried for so long, not for an hour
    python3 dev.py run ARGS...      the program itself: `run ask sample:terrace`

Needs Python 3.11 or newer and nothing else. It makes .venv/ beside itself; what `demo` and `run` write lies where
you are.
"""

from __future__ import annotations

import hashlib
import math
import os
import shutil
import subprocess
import sys
import time
import venv
from pathlib import Path

ROOT = Path(__file__).resolve().parent
VENV = ROOT / ".venv"
BIN = VENV / ("Scripts" if os.name == "nt" else "bin")
PYTHON = BIN / ("python.exe" if os.name == "nt" else "python")
BROWSERS = ("chromium", "chromium-browser", "google-chrome", "chrome", "msedge")
OLDEST = (3, 11)
PLAIN, WITH_TESTS = ".", ".[test]"
FUZZ_MINUTES = 60.0
"""How long `prove` tries damaged inputs where nothing else is said. [min]"""

CHECKS = (
    ("style (ruff format)", ("ruff", "format", "--check", "--quiet", ".")),
    ("style (ruff check)", ("ruff", "check", "--quiet", ".")),
    ("types (mypy)", ("mypy",)),
    ("layers (lint-imports)", ("lint-imports",)),
    ("spelling (codespell)", ("codespell",)),
)
"""What `test` runs before the tests: a name, and a command of the virtual environment."""


def main() -> int:
    """Do what the command line asks; the exit status."""
    what, *rest = sys.argv[1:] or [""]
    if what == "demo":
        set_up(PLAIN)
        return call([str(PYTHON), "-m", "wardwright", "demo", *rest], folder=None)
    if what == "run":
        set_up(PLAIN)
        return call([str(PYTHON), "-m", "wardwright", *rest], folder=None)
    if what == "test":
        set_up(WITH_TESTS)
        browser()
        return tests(rest) if rest else everything()
    if what == "prove":
        minutes = fuzz_minutes(rest)
        if minutes is None:
            print("dev.py: after prove there may be --fuzz-minutes and a number of minutes, nothing else.")
            return 2
        set_up(WITH_TESTS)
        browser()
        return prove(minutes)
    print(__doc__)
    return 0 if what in ("-h", "--help", "help") else 2


def set_up(spec: str) -> None:
    """Make .venv and install the package into it, unless that is done already."""
    mark = VENV / "set-up"
    state = state_of_sources()
    done = mark.read_text(encoding="utf-8") if mark.exists() else ""
    if PYTHON.exists() and done in (f"{spec} {state}", f"{WITH_TESTS} {state}"):
        return
    print("Setting up (the first time, and when pyproject.toml or the page has changed) ...", flush=True)
    if not works([str(PYTHON), "-m", "pip", "--version"]):
        make_environment()
    # A set-up that had the tools of the tests keeps them: the plain package is part of them.
    wanted = WITH_TESTS if done.startswith(WITH_TESTS) else spec
    pip = [
        str(PYTHON),
        "-m",
        "pip",
        "install",
        "--quiet",
        "--disable-pip-version-check",
        "--editable",
        wanted,
    ]
    if call(pip):
        sys.exit(
            "dev.py: the packages could not be installed: see the lines above. Mend that and run it again."
        )
    mark.write_text(f"{wanted} {state}", encoding="utf-8")


def state_of_sources() -> str:
    """A digest of what a set-up hangs on: this Python, the list of packages, and what the page is made of."""
    found = hashlib.sha256(sys.version.encode())
    files = [ROOT / "pyproject.toml", ROOT / "hatch_build.py"]
    for folder, folders, names in os.walk(ROOT / "web"):
        folders[:] = sorted(set(folders) - {"node_modules"})
        files += [Path(folder, name) for name in sorted(names)]
    for file in files:
        found.update(file.read_bytes())
    return found.hexdigest()


def make_environment() -> None:
    """Make .venv afresh."""
    try:
        venv.create(VENV, with_pip=True, clear=True)
    except subprocess.CalledProcessError:
        shutil.rmtree(VENV, ignore_errors=True)
        sys.exit("dev.py: Python's venv module is not whole here (Debian, Ubuntu: apt install python3-venv).")


def browser() -> None:
    """Fetch Chromium for the browser tests where it is missing and that can be done; else say what is skipped."""
    if os.environ.get("WARDWRIGHT_CHROMIUM") or any(map(shutil.which, BROWSERS)):
        return
    apt, sudo = shutil.which("apt-get"), shutil.which("sudo")
    is_root = hasattr(os, "geteuid") and os.geteuid() == 0
    if apt is None or not (is_root or sudo):
        print("No Chromium here, and no way to install it: the browser tests will be skipped.", flush=True)
        return
    print("Installing Chromium for the browser tests ...", flush=True)
    front = [] if is_root else [str(sudo)]
    environment = {**os.environ, "DEBIAN_FRONTEND": "noninteractive"}
    for step in (["update", "-qq"], ["install", "-y", "-qq", "--no-install-recommends", "chromium"]):
        if call([*front, apt, *step], quiet=True, environment=environment):
            print(f"apt-get {step[0]} failed: the browser tests will be skipped.", flush=True)
            return


def everything() -> int:
    """Run every check and all tests; name at the end what failed."""
    failed = failing_checks()
    print("-- tests (pytest)", flush=True)
    if tests(["-n", "2", "-q"]):
        failed.append("tests (pytest)")
    return verdict(failed)


def checks() -> int:
    """Run the checks without the tests."""
    return verdict(failing_checks())


def failing_checks() -> list[str]:
    """Run the checks; the names of those that fail."""
    failed = []
    for name, command in CHECKS:
        print(f"-- {name}", flush=True)
        if call([str(BIN / command[0]), *command[1:]]):
            failed.append(name)
    return failed


def verdict(failed: list[str]) -> int:
    """Say what failed; the exit status."""
    if failed:
        print("FAILED: " + ", ".join(failed))
    return 1 if failed else 0


def tests(arguments: list[str]) -> int:
    """Run pytest with some arguments."""
    return call([str(PYTHON), "-m", "pytest", *arguments])


def fuzz_minutes(arguments: list[str]) -> float | None:
    """For how long damaged inputs are tried. None where that is not said as it should be. [min]"""
    if not arguments:
        return FUZZ_MINUTES
    try:
        option, minutes = arguments
        return float(minutes) if option == "--fuzz-minutes" and 0.0 <= float(minutes) < math.inf else None
    except ValueError:
        return None


def prove(minutes: float) -> int:
    """Run the long property runs, the fuzzing and the benchmarks, and write the reports they make."""
    environment = {**os.environ, "WARDWRIGHT_PROVE": "1"}
    scripts = ROOT / "scripts"
    steps = (
        # Whoever has nothing left to do takes over what the other still has: some tests last a minute or two.
        (
            "long property runs (pytest)",
            ["-m", "pytest", "-n", "2", "--dist", "worksteal", "-q", "--durations=10"],
        ),
        ("damaged inputs (fuzz)", [str(scripts / "fuzz"), "--minutes", str(minutes)]),
        ("accuracy and benchmarks", [str(scripts / "build-reports")]),
        ("given houses", [str(scripts / "build-given-houses")]),
    )
    failed = []
    for number, (name, arguments) in enumerate(steps, start=1):
        print(f"-- {number} of {len(steps)}: {name}", flush=True)
        start = time.monotonic()
        if call([str(PYTHON), *arguments], environment=environment):
            failed.append(name)
        print(f"   {name}: {(time.monotonic() - start) / 60.0:.1f} min", flush=True)
    return verdict(failed)


def call(
    command: list[str],
    *,
    quiet: bool = False,
    environment: dict[str, str] | None = None,
    folder: Path | None = ROOT,
) -> int:
    """Run a command in the project's folder, or with None where the caller is; its exit status."""
    try:
        sink = subprocess.DEVNULL if quiet else None
        return subprocess.run(command, cwd=folder, stdout=sink, env=environment, check=False).returncode
    except KeyboardInterrupt:
        return 130


def works(command: list[str]) -> bool:
    """Whether a command can be run and ends well."""
    try:
        return subprocess.run(command, capture_output=True, check=False).returncode == 0
    except OSError:
        return False


if __name__ == "__main__":
    if sys.version_info < OLDEST:
        sys.exit(f"dev.py: Python 3.11 or newer is needed; this is {sys.version.split()[0]}.")
    sys.exit(main())
