"""A small share of each benchmark: both sides agree, and the ratio is not absurd. The budgets are for `prove`."""

from __future__ import annotations

import importlib.util
import os
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

FOLDER = Path(__file__).resolve().parents[2] / "benchmarks"


def loaded(name: str) -> ModuleType:
    spec = importlib.util.spec_from_file_location(f"benchmark_{name}", FOLDER / f"{name}.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_sight_with_height_agrees_with_the_ray_caster(monkeypatch: pytest.MonkeyPatch) -> None:
    benchmark = loaded("sight_height")
    monkeypatch.setattr(benchmark, "REACH_M", 7.0)
    found = benchmark.run()
    assert found["figures"]["cells_compared"] > 5000
    assert found["figures"]["agreeing"] >= 0.995
    assert found["ratio"] > 5.0  # 140 on a quiet machine at full size


def test_the_walking_map_agrees_with_the_visibility_graph(monkeypatch: pytest.MonkeyPatch) -> None:
    benchmark = loaded("walking_map")
    monkeypatch.setattr(benchmark, "CELLS", 40)
    figures = (found := benchmark.run())["figures"]
    assert figures["cells_compared_with_the_visibility_graph"] == 40
    assert figures["latest_s"] <= 1e-9
    assert figures["largest_relative_error"] <= 0.01
    assert found["ratio"] < 15.0  # 2 on a quiet machine


def test_after_a_move_the_answers_are_those_of_a_fresh_program() -> None:
    found = loaded("ask_after_a_move").run(1, "one-room")
    assert found["figures"]["same_answers_as_a_fresh_program"]
    assert found["ratio"] > 0.5


def test_links_levels_and_sun_after_a_move_are_those_of_a_fresh_program(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.syspath_prepend(str(FOLDER))
    found = loaded("links_levels_sun_after_a_move").run(1)
    assert found["figures"]["same_answers_as_a_fresh_program"]
    assert found["ratio"] > 2.0


def test_a_cold_ask_loads_no_ifc_reader_and_no_server() -> None:
    answers, megabytes, unwanted = loaded("ask_cold").loaded(os.environ)
    assert answers > 0
    assert unwanted == []
    assert megabytes < 600.0


def test_the_sun_year_agrees_with_the_ray_caster_to_a_step() -> None:
    found = loaded("sun_year").run(1)
    figures = found["figures"]
    assert figures["starts_and_ends_of_beams_compared"] > 2000
    assert figures["of_them_off_by_more_than_2_minutes"] <= 4
    assert found["ratio"] < 2.0  # 0.1 on a busy machine
    assert figures["times_sooner_after_one_detector_moved"] > 2.0


def test_a_drag_is_measured_in_a_browser(browser: Any, page_built: None) -> None:
    del page_built  # it is there now
    benchmark = loaded("drag")
    with benchmark.served() as address:
        app = benchmark.opened(browser, f"{address}#{benchmark.JOB}", ".answer")
        handle = f'[data-device="{benchmark.DEVICE}"] .ink-device-dot'
        found = benchmark.dragged(app, handle, swing=benchmark.SWING_PX["device"], moves=40)
        app.context.close()
    assert 0.0 < found.script_ms < found.work_ms < 100.0
    assert len(found.gaps_ms) > 10
    assert found.trials
    assert all(one["engine"] > 0.0 and one["drawing"] > 0.0 for one in found.trials)


def test_a_campaign_is_not_far_from_its_draws() -> None:
    benchmark = loaded("campaign")
    found = benchmark.measured("one-room", 20_000, 1)
    assert found["variates"] > 20
    assert 0.0 < found["caught"] < 1.0
    assert found["warm"] < 100.0 * found["reference"]


def test_every_benchmark_has_a_share_here() -> None:
    text = Path(__file__).read_text(encoding="utf-8")
    names = [path.stem for path in sorted(FOLDER.glob("*.py"))]
    assert names
    assert [name for name in names if f'loaded("{name}")' not in text] == []


def test_the_papers_cost_little_beside_the_typesetter() -> None:
    benchmark = loaded("papers")
    found = benchmark.run(repeats=1)
    assert found["figures"]["pages"] >= 30
    assert found["figures"]["thirty_pages_MB"] < 3.0
    assert found["ratio"] < 4.0  # 1.4 on a quiet machine
