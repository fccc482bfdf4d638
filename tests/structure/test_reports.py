"""The reports say what was found, and never call a miss a hit."""

from __future__ import annotations

from importlib.machinery import SourceFileLoader
from importlib.util import module_from_spec, spec_from_loader
from pathlib import Path
from typing import Any

import pytest

from accuracy.rows import Part, Row
from structure.source_tree import ROOT


@pytest.fixture(scope="module")
def reports() -> Any:
    loader = SourceFileLoader("build_reports", str(ROOT / "scripts" / "build-reports"))
    module = module_from_spec(spec_from_loader("build_reports", loader))
    loader.exec_module(module)
    return module


def row(computed: float, **changes: Any) -> Row:
    return Row("walk | straight [m]", "own", 2.0, computed, 0.02, "cells", "derived", **changes)


def test_the_accuracy_page_shows_a_miss(reports: Any) -> None:
    parts = [
        (Part("Walking", ()), (row(2.01), row(3.0), row(1.0, bound="at most"))),
        (Part("Away", ()), None),
    ]
    text = "\n".join(reports.accuracy_page(parts))
    lines = [line for line in text.splitlines() if line.startswith("| walk")]
    assert [line.rpartition(" | ")[2] for line in lines] == ["yes |", "**no** |", "yes |"]
    assert "walk \\| straight" in lines[0]
    assert "| at most 2 | 1 | 0 | 0.02 |" in lines[2]
    assert "2 of 3 rows are within their tolerance" in text
    assert text.index("## Walking") < text.index("**derived**: own") < text.index("## Away\n\nNot run")


def test_a_benchmark_that_does_not_run_is_not_met(reports: Any, tmp_path: Path) -> None:
    broken = tmp_path / "broken.py"
    broken.write_text("def run(): raise RuntimeError('the reader is gone')\n", encoding="utf-8")
    found = reports.benchmark(broken)
    assert not found["is_met"]
    assert "the reader is gone" in found["budget"]
    works = tmp_path / "works.py"
    works.write_text(
        "def run():\n    print('noise')\n"
        "    return {'name': 'n', 'figures': {'a_ms': 1.23456}, 'ratio': 3.0, 'budget': 'b', 'is_met': True}\n",
        encoding="utf-8",
    )
    found = reports.benchmark(works)
    assert found["is_met"]
    text = "\n".join(reports.benchmark_page([found]))
    assert "| n | 3 | b | yes |" in text
    assert "- a ms: 1.235" in text


def test_every_benchmark_can_be_run_by_the_harness() -> None:
    files = sorted((ROOT / "benchmarks").glob("*.py"))
    assert files
    assert [path.name for path in files if "\ndef run(" not in path.read_text(encoding="utf-8")] == []
