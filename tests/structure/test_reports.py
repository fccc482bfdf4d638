"""The reports say what was found, and never call a miss a hit."""

from __future__ import annotations

from importlib.machinery import SourceFileLoader
from importlib.util import module_from_spec, spec_from_loader
from pathlib import Path
from typing import Any

import pytest

from structure.source_tree import ROOT


@pytest.fixture(scope="module")
def reports() -> Any:
    loader = SourceFileLoader("build_reports", str(ROOT / "scripts" / "build-reports"))
    module = module_from_spec(spec_from_loader("build_reports", loader))
    loader.exec_module(module)
    return module


def row(**changes: object) -> dict[str, Any]:
    base = {
        "quantity": "walk | straight",
        "source": "own",
        "expected": 2.0,
        "computed": 2.01,
        "tolerance": 0.02,
    }
    return {**base, "why": "cells", **changes}


def test_a_row_is_met_only_within_its_tolerance(reports: Any) -> None:
    assert reports.with_error(row())["is_met"]
    assert not reports.with_error(row(computed=2.03))["is_met"]
    assert not reports.with_error(row(error=-0.5))["is_met"]
    assert not reports.with_error(row(computed=float("nan")))["is_met"]


def test_the_accuracy_page_shows_a_miss(reports: Any) -> None:
    text = "\n".join(
        reports.accuracy_page([reports.with_error(row()), reports.with_error(row(computed=3.0))])
    )
    lines = [line for line in text.splitlines() if line.startswith("| walk")]
    assert lines[0].endswith("| yes |")
    assert lines[1].endswith("| **no** |")
    assert "walk \\| straight" in lines[0]


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
