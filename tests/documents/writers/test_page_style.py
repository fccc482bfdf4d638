from __future__ import annotations

import re

from wardwright.documents.drawing.inks import COLOURS
from wardwright.documents.writers.page_style import PAGE_STYLE


def test_nothing_is_fetched() -> None:
    assert "url(" not in PAGE_STYLE
    assert "@import" not in PAGE_STYLE
    assert "@font-face" not in PAGE_STYLE


def test_every_ink_has_a_colour_on_the_screen() -> None:
    assert all(f"--{name}:" in PAGE_STYLE for name in COLOURS)


def test_screen_light_and_dark_and_paper_are_there() -> None:
    assert "prefers-color-scheme:dark" in PAGE_STYLE
    assert "@page{size:A4" in PAGE_STYLE
    assert "@media print" in PAGE_STYLE


def _luminance(colour: str) -> float:
    parts = [int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def test_a_screen_has_no_colours_but_the_inks() -> None:
    found = dict(re.findall(r"--(\w+):(#[0-9a-f]{6})", PAGE_STYLE.split("}")[0]))
    for name in ("blue", "sky", "green", "orange", "vermilion", "purple"):
        assert found[name] == COLOURS[name]
    dark = dict(re.findall(r"--(\w+):(#[0-9a-f]{6})", PAGE_STYLE.split("scheme:dark){")[1].split("}")[0]))
    assert dark["blue"] == COLOURS["sky"]


def test_letters_stand_out_from_the_paper() -> None:
    # Contrast of at least 4.5 to 1 (WCAG 2.2, 1.4.3), light and dark.
    for block in (PAGE_STYLE.split("@media")[0], PAGE_STYLE.split("prefers-color-scheme:dark){")[1]):
        found = dict(re.findall(r"--(\w+):(#[0-9a-f]{6})", block.split("}")[0]))
        paper = _luminance(found["paper"])
        for name in ("ink", "soft"):
            one = _luminance(found[name])
            contrast = (max(one, paper) + 0.05) / (min(one, paper) + 0.05)
            assert contrast >= 4.5, (name, contrast)
