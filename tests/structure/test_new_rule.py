"""The form of a new rule fits the table, and is not taken for a finished one."""

from __future__ import annotations

import importlib.util
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from structure.source_tree import ROOT
from wardwright.rules.page import HEADINGS, rule_sections
from wardwright.rules.registry import findings_of, tabled
from wardwright.rules.table import RULES


def made(folder: Path, *arguments: str) -> subprocess.CompletedProcess[str]:
    (folder / "scripts").mkdir(exist_ok=True)
    script = shutil.copy(ROOT / "scripts" / "new-rule", folder / "scripts" / "new-rule")
    return subprocess.run([sys.executable, script, *arguments], capture_output=True, text=True, check=False)


@pytest.fixture
def place(tmp_path: Path) -> Path:
    (tmp_path / "src" / "wardwright" / "rules").mkdir(parents=True)
    return tmp_path


def test_the_form_is_a_rule_that_is_not_yet_written(place: Path) -> None:
    done = made(place, "ZZZ901", "movement/movement-detector-behind-a-curtain")
    assert done.returncode == 0, done.stderr
    name = "movement_detector_behind_a_curtain"
    path = place / "src" / "wardwright" / "rules" / "movement" / f"{name}.py"
    spec = importlib.util.spec_from_file_location(name, path)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    rule = getattr(module, name)
    assert tabled(*RULES, rule)[-1] is rule
    assert [heading for heading, _ in rule_sections(rule)] == list(HEADINGS)
    with pytest.raises(NotImplementedError):
        findings_of(rule, None, None)
    test = place / "tests" / "rules" / "movement" / f"test_{name}.py"
    compile(test.read_text(encoding="utf-8"), str(test), "exec")
    assert made(place, "ZZZ901", f"movement/{name.replace('_', '-')}").returncode == 2


@pytest.mark.parametrize(
    "arguments", [(), ("ZZZ901",), ("zzz901", "movement/x"), ("ZZZ901", "x"), ("ZZZ901", "A/b")]
)
def test_what_is_no_rule_is_refused(place: Path, arguments: tuple[str, ...]) -> None:
    assert made(place, *arguments).returncode == 2
    assert not (place / "tests").exists()


def test_a_code_is_given_once(place: Path) -> None:
    done = made(place, RULES[0].code, "movement/another-fault")
    assert done.returncode == 2
    assert "is taken" in done.stderr
