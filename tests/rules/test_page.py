"""A rule's text as data."""

from __future__ import annotations

from wardwright.rules.page import HEADINGS, rule_sections
from wardwright.rules.registry import Rule
from wardwright.rules.table import rule


def text() -> None:
    """Say it in one line.

    What it checks
        The first line
        and the second.

        Another paragraph.
    Why it matters
        Because.

    Parameters
    ----------
    site
        Not part of it.
    """


def test_lines_become_paragraphs_and_arguments_are_left_out() -> None:
    one = Rule("ABC101", "a-fault", "0.1", "trial use", "assumption", "advise", (), text)  # type: ignore[arg-type] # only its text is read
    assert rule_sections(one) == (
        ("What it checks", "The first line and the second.\n\nAnother paragraph."),
        ("Why it matters", "Because."),
    )
    assert one.summary == "Say it in one line."


def test_real_rules_have_the_four_headings() -> None:
    assert tuple(heading for heading, _ in rule_sections(rule("CON101"))) == HEADINGS
