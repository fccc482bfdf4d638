"""Settings of all tests: hypothesis profiles, data that lies outside the repository, the browser."""

from __future__ import annotations

import importlib.util
import os
import shutil
from collections.abc import Callable, Generator, Iterator
from pathlib import Path
from typing import Any

import pytest
from hypothesis import settings

ROOT = Path(__file__).resolve().parents[1]
GIVEN = ROOT.parent / "shared" / "data"
"""House files that nobody here made; they lie beside the repository and are never part of it."""
IS_PROVING = os.environ.get("WARDWRIGHT_PROVE") == "1"
IN_CI = os.environ.get("CI", "") not in ("", "0", "false")
SKIPPED_KEY = pytest.StashKey[int]()

# `test` draws the same few examples each time; `prove` draws many, and new ones each time.
settings.register_profile("test", max_examples=20, derandomize=True, deadline=None, database=None)
settings.register_profile("prove", max_examples=400, deadline=None, database=None, print_blob=True)
settings.load_profile("prove" if IS_PROVING else "test")


@pytest.fixture(scope="session")
def given() -> Callable[[str], Path]:
    """Find a file under ../shared/data; the test is skipped, and counted, where it is not there."""

    def path_of(name: str) -> Path:
        path = GIVEN / name
        if not path.exists():
            pytest.skip(f"../shared/data/{name} is not there")
        return path

    return path_of


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    for item in items:
        if "given" in getattr(item, "fixturenames", ()) and item.get_closest_marker("given_data") is None:
            item.add_marker("given_data")


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(
    item: pytest.Item,
) -> Generator[None, pytest.TestReport, pytest.TestReport]:
    """In CI, where the folder is there, a test of given data that skips itself has failed."""
    report = yield
    must_run = IN_CI and GIVEN.is_dir() and item.get_closest_marker("given_data") is not None
    if must_run and report.skipped and not hasattr(report, "wasxfail"):
        reason = report.longrepr[2] if isinstance(report.longrepr, tuple) else str(report.longrepr)
        report.outcome = "failed"
        report.longrepr = f"{item.nodeid}: {reason}; in CI, which has the data, this must not be skipped"
    return report


class FailuresAtOnce:
    """Tells of a failure when it happens, with the seed: a long run that is cut short has not lost what it found."""

    def __init__(self, config: pytest.Config) -> None:
        self.config = config

    def pytest_runtest_logreport(self, report: pytest.TestReport) -> None:
        reporter = self.config.pluginmanager.get_plugin("terminalreporter")
        if report.failed and reporter is not None:
            seed = self.config.getoption("randomly_seed", None)
            reporter.write_line(f"\nFAILED {report.nodeid} (--randomly-seed={seed})")
            reporter.write_line(report.longreprtext)


def pytest_configure(config: pytest.Config) -> None:
    if IS_PROVING and not hasattr(config, "workerinput"):
        config.pluginmanager.register(FailuresAtOnce(config))


def pytest_terminal_summary(terminalreporter: Any, config: pytest.Config) -> None:
    skipped = terminalreporter.stats.get("skipped", [])
    config.stash[SKIPPED_KEY] = sum("given_data" in report.keywords for report in skipped)


@pytest.hookimpl(trylast=True)
def pytest_unconfigure(config: pytest.Config) -> None:
    count = config.stash.get(SKIPPED_KEY, None)
    reporter = config.pluginmanager.get_plugin("terminalreporter")
    if count is not None and reporter is not None:
        reporter.write_line(f"{count} tests skipped for want of ../shared/data")


@pytest.fixture(scope="session")
def browser() -> Iterator[Any]:
    """Chromium, started once; a browser test is skipped, with the reason, where there is none."""
    names = ("chromium", "chromium-browser", "google-chrome", "chrome", "msedge")
    found = os.environ.get("WARDWRIGHT_CHROMIUM") or next(filter(None, map(shutil.which, names)), None)
    if found is None:
        pytest.skip("no Chromium on this machine")
    from playwright.sync_api import sync_playwright  # noqa: PLC0415 - only where a browser is

    flags = [
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
    ]
    if hasattr(os, "geteuid") and os.geteuid() == 0:
        flags.append("--no-sandbox")  # Chromium refuses to start as root without it
    with sync_playwright() as driver:
        started = driver.chromium.launch(args=flags, executable_path=found)
        yield started
        started.close()


@pytest.fixture(scope="session")
def page_built() -> None:
    """The page built of these sources: an installation does it, a tree that was not installed does it here."""
    spec = importlib.util.spec_from_file_location("wardwright_page", ROOT / "web" / "build.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    if module.is_wanted():
        if module.own_node() is None:
            pytest.skip("the page is not built, and no Node.js is here to build it")
        module.build(with_tools=True)
