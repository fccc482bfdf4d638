"""The two commands, and what they rest on."""

from __future__ import annotations

import importlib.util
import os
import re
import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from structure.source_tree import ROOT, imported
from wardwright.questions.table import QUESTIONS
from wardwright.rules.table import RULES


def test_dev_py_needs_python_alone() -> None:
    roots = {name.split(".")[0] for name in imported(ROOT / "dev.py")} - {"__future__"}
    assert roots <= sys.stdlib_module_names


def test_dev_py_says_what_it_does_and_refuses_what_it_does_not_know() -> None:
    for arguments, status in ((["--help"], 0), ([], 2), (["fly"], 2)):
        done = subprocess.run(
            [sys.executable, ROOT / "dev.py", *arguments], capture_output=True, text=True, check=False
        )
        assert done.returncode == status
        assert "python3 dev.py demo" in done.stdout


def test_dev_py_runs_the_program_where_the_caller_is(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    spec = importlib.util.spec_from_file_location("dev", ROOT / "dev.py")
    assert spec is not None
    assert spec.loader is not None
    dev = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(dev)
    monkeypatch.setattr(dev, "set_up", lambda _: None)
    monkeypatch.setattr(dev, "PYTHON", Path(sys.executable))
    monkeypatch.chdir(tmp_path)
    for command in (["run", "demo"], ["demo"]):
        monkeypatch.setattr(sys, "argv", ["dev.py", *command])
        assert dev.main() == 0
        assert (tmp_path / "demo" / "fitter" / "page.html").is_file()
        shutil.rmtree(tmp_path / "demo")


def test_dev_py_takes_the_minutes_of_prove_and_nothing_else() -> None:
    for arguments in (["--fuzz-minutes"], ["--fuzz-minutes", "soon"], ["--fuzz-minutes", "-1"], ["quickly"]):
        command = [sys.executable, ROOT / "dev.py", "prove", *arguments]
        done = subprocess.run(command, capture_output=True, text=True, check=False)
        assert done.returncode == 2
        assert "--fuzz-minutes" in done.stdout


def test_ci_runs_what_people_run() -> None:
    script = ROOT / ".ci" / "run"
    assert "python3 dev.py test" in script.read_text(encoding="utf-8")
    assert "set -eu" in script.read_text(encoding="utf-8")
    if os.name == "posix":
        assert os.access(script, os.X_OK)


def test_spelling_is_not_asked_of_what_is_built_or_fetched() -> None:
    """A clean clone whose page was built holds other people's sources: they must not fail its first `test`."""
    settings = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))
    skipped = settings["tool"]["codespell"]["skip"].split(",")
    ignored = (ROOT / ".gitignore").read_text(encoding="utf-8").splitlines()
    folders = [line.strip("/").rpartition("/")[2] for line in ignored if line.startswith("/")]
    assert "node_modules" in folders
    assert [name for name in folders if name not in skipped] == []


def test_the_readme_names_the_two_commands() -> None:
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    assert "python3 dev.py demo" in text
    assert "python3 dev.py test" in text


def test_the_readme_counts_rules_and_questions_as_they_are() -> None:
    text = (ROOT / "README.md").read_text(encoding="utf-8")
    assert f"siting rules there are {len(RULES)}," in text
    numbers = re.findall(
        r"\((\d+)\)", text.partition("questions are answered in this version")[2].partition("\n")[0]
    )
    assert [int(one) for one in numbers] == [one.number for one in QUESTIONS]


def test_every_script_says_what_it_is_for() -> None:
    for path in sorted((ROOT / "scripts").iterdir()):
        if path.is_file():
            head = path.read_text(encoding="utf-8").splitlines()[:2]
            assert head[0].startswith("#!"), path.name
            assert head[1].startswith(('"""', "# ")), path.name


def test_the_readme_shows_what_its_commands_print() -> None:
    script = ROOT / "scripts" / "build-readme-examples"
    done = subprocess.run([sys.executable, script, "--check"], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
