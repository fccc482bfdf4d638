"""The plan on the screen: letters that can be read, and a bar that says how long things are there."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

import pytest

from common.served import Served
from wardwright.store.jobs.opening import new_job
from wardwright.store.samples import read_sample, sample_names
from web.conftest import SHAPES, OpenPage, letters_over_others, until


@pytest.mark.parametrize("shape", sorted(SHAPES))
def test_no_letters_of_a_sample_lie_on_others_on_any_storey(
    open_page: OpenPage, served: Served, shape: str
) -> None:
    for name in sample_names():
        site = read_sample(name)
        file = f"plan-{name}.job"
        new_job(Path(served.folder) / file, site, author="fitter").close()
        page = open_page(shape, job=file)
        for storey in site.storeys:
            page.get_by_role("button", name=storey.name, exact=True).click()
            until(lambda page=page, storey=storey: f"Plan of {storey.name}" in label_of(page))
            assert letters_over_others(page) == [], (name, storey.id)
        page.context.close()


def label_of(page: Any) -> str:
    return str(page.locator(".plan .marks").get_attribute("aria-label"))


def test_the_bar_is_as_long_as_it_says_and_no_scale_is_claimed(open_page: OpenPage) -> None:
    page = open_page()
    assert "1:50" not in page.locator(".plan").inner_text()
    site = read_sample("terrace")
    (ax, ay), (bx, by) = site.wall("hall-living-wall").line_m
    page.get_by_role("button", name="Survey", exact=True).click()

    def px_per_m() -> tuple[float, float]:
        told = float(re.search(r"([0-9.]+) m$", page.locator(".scale-bar").inner_text())[1])
        bar = page.locator(".scale-bar .length").bounding_box()["width"] / told
        wall = page.evaluate("document.querySelector('[data-wall=hall-living-wall]').getTotalLength()")
        scale = page.evaluate("document.querySelector('.marks').getScreenCTM().a")
        return bar, wall * scale / ((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5

    bar, plan = px_per_m()
    assert bar == pytest.approx(plan, rel=0.01)
    page.get_by_role("button", name="Closer").click()
    nearer = until(lambda: px_per_m() if px_per_m()[0] > 1.1 * bar else None)
    assert nearer[0] == pytest.approx(nearer[1], rel=0.01)
