from __future__ import annotations

from collections.abc import Callable

import pytest

from common.fitted import DAY, as_text, fitted
from wardwright.documents.content.plan_sheets import plan_sheets
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def test_the_plan_reads_as_it_did(kept: Callable[[str, str], None]) -> None:
    kept("plan.txt", as_text(plan_sheets(fitted(), CATALOGUE, drawn_up=DAY)))


@pytest.mark.parametrize("name", ["one-room", "terrace", "terrace-better"])
def test_each_storey_has_its_sheet_at_one_scale_and_each_device_its_line(name: str) -> None:
    site = read_sample(name)
    paper = plan_sheets(site, CATALOGUE, drawn_up=DAY)
    drawings = [section.drawing for section in paper.sections]
    assert [section.heading for section in paper.sections] == [one.name for one in site.storeys]
    assert all(drawing is not None for drawing in drawings)
    assert len({drawing.scale for drawing in drawings if drawing}) == 1
    assert sum(len(section.key) for section in paper.sections) == len(site.devices)


def test_a_line_says_how_high_and_how_held() -> None:
    lines = {
        words
        for section in plan_sheets(fitted(), CATALOGUE, drawn_up=DAY).sections
        for _, words in section.key
    }
    assert "2  Ground hall movement: 2.20 m, looks to the lower left, screws" in lines
    assert "1  Ground front door contact: on Front door, gap 8 mm, adhesive" in lines
    assert "Ground hall keypad: 1.20 m" in lines


def test_a_storey_without_devices_says_so() -> None:
    site = read_sample("terrace").model_copy(update={"devices": (), "zones": ()})
    assert all(
        section.text == ("No devices on this storey.",)
        for section in plan_sheets(site, CATALOGUE, drawn_up=DAY).sections
    )


def test_a_long_key_does_not_halve_the_scale() -> None:
    """The bungalow has 24 devices: its key alone would leave room for 1:200 only."""
    assert plan_sheets(read_sample("bungalow"), CATALOGUE, drawn_up=DAY).title == "Plan, 1:100"


def test_letter_is_lower_and_the_terrace_still_fits_at_its_scale() -> None:
    for size in ("a4", "letter"):
        paper = plan_sheets(read_sample("terrace"), CATALOGUE, drawn_up=DAY, size=size)
        assert paper.title == "Plan, 1:50"
