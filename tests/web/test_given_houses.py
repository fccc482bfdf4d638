"""Every given house, brought in and fitted with a sensible kit, opened in the browser: its answers and its plans."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from common.given_houses import HOUSES, GivenHouse
from common.sensible_kit import with_sensible_kit
from common.served import Served
from wardwright.model.site import Site
from wardwright.questions.table import QUESTIONS
from wardwright.store.catalogue import load_catalogue
from wardwright.store.jobs.opening import new_job
from web.conftest import OpenPage, letters_over_others, until

pytestmark = pytest.mark.given_data
GROUPS = 6
WORST_FIRST = ("bad", "thin", "unknown", "good")
SLACK_PX = 1.0
PLAN = """() => {
  const box = (one) => ((at) => [at.left, at.top, at.right, at.bottom])(one.getBoundingClientRect());
  return {
    sheet: box(document.querySelector(".plan > svg")),
    house: box(document.querySelector(".plan .house")),
    strokes: document.querySelectorAll(".plan .house path, .plan .house polygon").length,
    devices: [...document.querySelectorAll("[data-device]")].map((one) => one.dataset.device),
    unlettered: [...document.querySelectorAll(".ink-device-letters")].filter((one) => one.textContent === "?").length,
  };
}"""


@pytest.mark.parametrize("group", range(GROUPS))
def test_it_opens_with_answers_and_a_plan_of_each_storey(
    given: Callable[[str], Path], open_page: OpenPage, served: Served, group: int
) -> None:
    for house in HOUSES[group::GROUPS]:
        site = with_sensible_kit(house.brought(given(house.file)).site, load_catalogue())
        file = file_of(house)
        new_job(served.folder / file, site, author="fitter").close()
        page = open_page(job=file)
        look_at(page, site)
        page.context.close()


def file_of(house: GivenHouse) -> str:
    return "".join(letter if letter.isalnum() else "-" for letter in house.name) + ".job"


def opened(page: Any) -> None:
    """Open every question, and all of its answers."""
    for shut in (".group .head[aria-expanded=false]", ".group .more[aria-expanded=false]"):
        while (found := page.locator(shut)).count():
            found.first.click()


def in_order(looks: list[str]) -> bool:
    verdicts = [look.partition("is-")[2] for look in looks]
    return verdicts == sorted(verdicts, key=WORST_FIRST.index)


def look_at(page: Any, site: Site) -> None:
    """All answers are there, worst first; every storey's plan fits its window and shows its devices."""
    opened(page)
    heads = page.locator(".group").evaluate_all(
        "all => all.map(one => [one.dataset.question, one.className])"
    )
    assert sorted(int(number) for number, _ in heads) == sorted(one.number for one in QUESTIONS)
    assert in_order([look for _, look in heads])
    for number, _ in heads:
        lines = page.locator(f'.group[data-question="{number}"] .answer')
        assert in_order(lines.evaluate_all("all => all.map(one => one.className)"))
    assert page.locator(".note").count() == 0
    seen: list[str] = []
    storeys = page.locator(".plan-tools button[aria-pressed]")
    assert storeys.count() == len(site.storeys)
    for i in range(len(site.storeys)):
        storeys.nth(i).click()
        until(lambda i=i: storeys.nth(i).get_attribute("aria-pressed") == "true")
        plan = page.evaluate(PLAN)
        assert plan["strokes"] > 3
        assert plan["unlettered"] == 0
        (x0, y0, x1, y1), (left, top, right, bottom) = plan["sheet"], plan["house"]
        assert left >= x0 - SLACK_PX
        assert top >= y0 - SLACK_PX
        assert right <= x1 + SLACK_PX
        assert bottom <= y1 + SLACK_PX
        assert right - left > 0.6 * (x1 - x0) or bottom - top > 0.6 * (y1 - y0)
        assert letters_over_others(page) == []
        seen += plan["devices"]
    assert sorted(seen) == sorted(device.id for device in site.devices)
