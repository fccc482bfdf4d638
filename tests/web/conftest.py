"""The app in a real browser: its server, pages that must make no error and ask no other host, and real touch."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

from common.served import Served
from wardwright.store.jobs.opening import new_job
from wardwright.store.samples import read_sample

JOB = "terrace.job"
SHAPES: dict[str, dict[str, Any]] = {
    "desktop": {"viewport": {"width": 1280, "height": 800}},
    "tablet": {
        "viewport": {"width": 768, "height": 1024},
        "device_scale_factor": 2,
        "has_touch": True,
        "is_mobile": True,
    },
    "phone": {
        "viewport": {"width": 360, "height": 740},
        "device_scale_factor": 2,
        "has_touch": True,
        "is_mobile": True,
    },
}


@pytest.fixture
def served(tmp_path: Path, page_built: None) -> Iterator[Served]:
    del page_built  # it is there now
    new_job(tmp_path / JOB, read_sample("terrace"), author="fitter").close()
    server = Served(tmp_path)
    yield server
    server.stop()


OpenPage = Callable[..., Any]


@pytest.fixture
def open_page(browser: Any, served: Served) -> Iterator[OpenPage]:
    contexts, errors, foreign = [], [], []

    def watch_request(request: Any) -> None:
        if not request.url.startswith((served.url, "data:", "blob:")):
            foreign.append(request.url)

    def make(shape: str = "desktop", *, job: str = JOB, ready: str = ".answer", **more: Any) -> Any:
        context = browser.new_context(**{**SHAPES[shape], **more})
        contexts.append(context)
        page = context.new_page()
        page.on("pageerror", lambda fault: errors.append(str(fault)))
        page.on("request", watch_request)
        page.goto(served.url + (f"#{job}" if job else ""))
        page.wait_for_selector("html[data-ready]")
        page.wait_for_selector(ready)
        return page

    yield make
    for context in contexts:
        context.close()
    assert not errors, errors
    assert not foreign, foreign


def until(what: Callable[[], Any], seconds: float = 20.0) -> Any:
    """Poll from here: the browser's own waiting takes a promise for an answer."""
    end = time.monotonic() + seconds
    while not (found := what()):
        assert time.monotonic() < end, "timed out"
        time.sleep(0.05)
    return found


def middle_of(page: Any, selector: str) -> tuple[float, float]:
    box = page.locator(selector).first.bounding_box()
    return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2


def dot_of(page: Any, device: str) -> tuple[float, float]:
    return middle_of(page, f'[data-device="{device}"] .ink-device-dot')


def dragged(
    page: Any, device: str, by: tuple[float, float], *, steps: int = 12, lets_go: bool = True
) -> None:
    x, y = dot_of(page, device)
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x + by[0], y + by[1], steps=steps)
    if lets_go:
        page.mouse.up()


LETTERS = """() => {
  const box = (one) => ((at) => [at.left, at.top, at.right, at.bottom])(one.getBoundingClientRect());
  const of = (mark, style) => box(mark.querySelector(style));
  return [...document.querySelectorAll("[data-device]")].map((one) =>
    ({ id: one.dataset.device, letters: of(one, ".ink-device"), dot: of(one, ".ink-device-dot") }));
}"""


def letters_over_others(page: Any) -> list[tuple[str, str]]:
    """The devices whose letters lie on the letters or the dot of another, on the storey that is shown."""
    marks = page.evaluate(LETTERS)

    def meet(one: list[float], other: list[float]) -> bool:
        return min(one[2], other[2]) > max(one[0], other[0]) and min(one[3], other[3]) > max(one[1], other[1])

    return [
        (one["id"], other["id"])
        for one in marks
        for other in marks
        if one is not other and (meet(one["letters"], other["letters"]) or meet(one["letters"], other["dot"]))
    ]


def touch_dragged(page: Any, device: str, by: tuple[float, float], *, steps: int = 12) -> None:
    """Real touch: it passes the browser's hit test, touch-action and pointer capture."""
    link = page.context.new_cdp_session(page)
    x, y = dot_of(page, device)

    def touch(kind: str, share: float) -> None:
        at = [] if kind == "touchEnd" else [{"x": x + by[0] * share, "y": y + by[1] * share}]
        link.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": at})

    touch("touchStart", 0.0)
    for step in range(1, steps + 1):
        touch("touchMove", step / steps)
    touch("touchEnd", 1.0)


def assert_no_barrier(page: Any) -> None:
    """No violation of what a machine can find, of the whole page as it stands."""
    from axe_playwright_python.sync_playwright import Axe  # noqa: PLC0415 - only where a browser is

    wanted = ["wcag2a", "wcag2aa", "wcag21aa", "wcag22aa", "best-practice"]
    found = Axe().run(page, options={"runOnly": wanted})
    assert found.violations_count == 0, found.generate_report()


def assert_fits(page: Any, within: str) -> None:
    """Nothing stands out of the screen at its side, and what is pressed is large enough for a finger."""
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth + 1")
    small = page.evaluate(
        """(within) => [...document.querySelectorAll(`${within} :is(button:not(.plain), a.button, select, input)`)]
        .filter((one) => one.checkVisibility() && one.getBoundingClientRect().height < 43.5)
        .map((one) => one.outerHTML)""",
        within,
    )
    assert small == []
