"""What must not be in the repository: promises the program cannot keep, and traces of one machine."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path

import pytest

from structure.source_tree import ROOT

TOP_FILES = (
    "README.md",
    "ARCHITECTURE.md",
    "CONTRIBUTING.md",
    "CHANGELOG.md",
    "dev.py",
    "pyproject.toml",
    ".ci/run",
    "hatch_build.py",
    "web/build.py",
    "web/index.html",
    "web/package.json",
    "web/package-lock.json",
    "web/vite.config.ts",
)
FOLDERS = ("src", "docs", "design", "scripts", "benchmarks", "tests", "web/src", "web/public")
PROMISES = re.compile(r"\b(certified|compliant|insurance[- ]approved|deters?)\b", re.IGNORECASE)
MACHINE_PATHS = re.compile(r"(?<![\w.])/(?:work|home|root|farm|Users|tmp)/[\w.-]+")
# In pieces, so that this file does not hold what it looks for.
HOSTS = ("pypi" + ".org", "pythonhosted" + ".org", "npmjs" + ".org", "npmjs" + ".com", "crates" + ".io")
MAY_NAME_THE_WORDS = ("tests/",)
"""Tests may hold the words, to look for them in what the program prints."""


@cache
def texts() -> tuple[tuple[str, str], ...]:
    paths = [ROOT / name for name in TOP_FILES if (ROOT / name).is_file()]
    for folder in FOLDERS:
        paths += sorted(path for path in (ROOT / folder).rglob("*") if path.is_file())
    read = [(path.relative_to(ROOT).as_posix(), text_of(path)) for path in paths]
    return tuple((name, text) for name, text in read if text is not None)


def text_of(path: Path) -> str | None:
    if "__pycache__" in path.parts:
        return None
    try:
        return path.read_text(encoding="utf-8")
    except UnicodeDecodeError:
        return None


def lines_with(pattern: re.Pattern[str], *, but_not: tuple[str, ...] = ()) -> list[str]:
    return [
        f"{name}:{number}: {line.strip()[:120]}"
        for name, text in texts()
        if not name.startswith(but_not)
        for number, line in enumerate(text.splitlines(), 1)
        if pattern.search(line)
    ]


def test_no_promise_is_printed() -> None:
    assert not lines_with(PROMISES, but_not=MAY_NAME_THE_WORDS)


def test_no_path_of_a_machine() -> None:
    assert not lines_with(MACHINE_PATHS)


def test_no_host_of_a_registry() -> None:
    assert not lines_with(re.compile("|".join(re.escape(host) for host in HOSTS)))


def test_the_files_that_people_look_for_are_there() -> None:
    wanted = ("README.md", "ARCHITECTURE.md", "CONTRIBUTING.md", "CHANGELOG.md", "LICENSE")
    assert [name for name in wanted if not (ROOT / name).is_file()] == []


@pytest.mark.parametrize("line", ["an approved and Certified kit", "a bell box deters", "EN-compliant"])
def test_a_promise_is_seen(line: str) -> None:
    assert PROMISES.search(line)
