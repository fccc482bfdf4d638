from __future__ import annotations

import itertools

from wardwright.documents.drawing.inks import COLOURS, INKS, PREFIX, box_size_mm, stylesheet, text_width_mm

OKABE_ITO = {"#e69f00", "#56b4e9", "#009e73", "#f0e442", "#0072b2", "#d55e00", "#cc79a7", "#000000"}
"""M. Okabe and K. Ito, "Color Universal Design", 2008 (from memory)."""


def test_every_colour_but_ink_and_paper_is_of_the_published_set() -> None:
    assert {
        value for name, value in COLOURS.items() if name not in ("ink", "soft", "faint", "paper")
    } <= OKABE_ITO


def test_areas_differ_without_their_colour() -> None:
    # In grey, the pattern alone must tell them apart.
    areas = [INKS[name] for name in ("seen", "possibly-seen", "blind", "leak", "unnoticed-floor", "hot")]
    for a, b in itertools.combinations(areas, 2):
        assert (a.hatch, a.dash_mm) != (b.hatch, b.dash_mm)


def test_the_alarms_and_the_intruders_bars_differ_without_their_colour() -> None:
    assert INKS["alarm-range"].dash_mm != INKS["intruder-range"].dash_mm
    assert INKS["alarm-point"].fill != INKS["intruder-point"].fill


def test_no_letters_are_smaller_than_six_points() -> None:
    # 6 pt are 2.117 mm.
    assert all(ink.size_mm >= 2.117 for ink in INKS.values() if ink.size_mm)


def test_each_style_has_its_rule() -> None:
    rules = stylesheet(COLOURS)
    assert all(f".{PREFIX}{name}{{" in rules for name in INKS)
    assert f".{PREFIX}wall{{fill:#1b1a17;stroke:#1b1a17;stroke-width:0.25}}" in rules.splitlines()


def test_a_rule_asks_for_one_class_alone() -> None:
    # What a page uses again has no ancestors: a rule that asks for one would leave it without ink.
    selectors = [line.partition("{")[0] for line in stylesheet(COLOURS).splitlines()]
    assert all(selector.startswith(f".{PREFIX}") and " " not in selector for selector in selectors)


def test_a_longer_text_is_wider_and_its_box_wider_still() -> None:
    assert text_width_mm("device", "MD12") > text_width_mm("device", "MD")
    assert box_size_mm("device", "MD")[0] > text_width_mm("device", "MD")
