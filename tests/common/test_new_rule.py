"""scripts/new-rule makes a form that can be filled in, and writes over nothing."""

from __future__ import annotations

import ast
import shutil
from importlib.machinery import ModuleSpec, SourceFileLoader
from importlib.util import module_from_spec, spec_from_loader
from pathlib import Path
from typing import cast

import pytest

from structure.source_tree import ROOT
from wardwright.rules.page import HEADINGS

FORM = ("MOV199", "movement/movement-detector-behind-a-curtain")
RULE = "src/wardwright/rules/movement/movement_detector_behind_a_curtain.py"
TEST = "tests/rules/movement/test_movement_detector_behind_a_curtain.py"


@pytest.fixture
def copy(tmp_path: Path) -> Path:
    """An empty checkout that holds the script alone."""
    (tmp_path / "scripts").mkdir()
    (tmp_path / "src" / "wardwright" / "rules").mkdir(parents=True)
    shutil.copy(ROOT / "scripts" / "new-rule", tmp_path / "scripts" / "new-rule")
    return tmp_path


def run(copy: Path, *arguments: str) -> int:
    """The exit status of the script, run in this process."""
    loader = SourceFileLoader("new_rule", str(copy / "scripts" / "new-rule"))
    module = module_from_spec(cast("ModuleSpec", spec_from_loader("new_rule", loader)))
    loader.exec_module(module)
    return cast("int", module.main(list(arguments)))


def test_the_form_has_the_rule_the_headings_and_its_test(copy: Path) -> None:
    assert run(copy, *FORM) == 0
    tree = ast.parse((copy / RULE).read_text(encoding="utf-8"))
    (function,) = (node for node in tree.body if isinstance(node, ast.FunctionDef))
    assert function.name == "movement_detector_behind_a_curtain"
    text = ast.get_docstring(function) or ""
    assert [line for line in text.splitlines() if line in HEADINGS] == list(HEADINGS)
    assert "test_it_cannot_run" in (copy / TEST).read_text(encoding="utf-8")
    assert "codes MOV." in (copy / RULE).with_name("__init__.py").read_text(encoding="utf-8")


def test_nothing_is_written_over(copy: Path) -> None:
    run(copy, *FORM)
    (copy / RULE).write_text("mine", encoding="utf-8")
    assert run(copy, *FORM) == 2
    assert (copy / RULE).read_text(encoding="utf-8") == "mine"


@pytest.mark.parametrize(
    "arguments",
    [
        (),
        ("MOV1", FORM[1]),
        ("MOV199", "no-subject"),
        ("MOV101", FORM[1]),
        ("MOV199", "movement/movement-detector-facing-glass"),
    ],
    ids=["nothing", "no code", "no subject", "code taken", "name taken"],
)
def test_a_wrong_call_writes_nothing(copy: Path, arguments: tuple[str, ...]) -> None:
    assert run(copy, *arguments) == 2
    assert list((copy / "src" / "wardwright" / "rules").iterdir()) == []
