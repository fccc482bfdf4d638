from __future__ import annotations

import re

from wardwright.documents.writers.page_template import PAGE_TEMPLATE


def test_nothing_runs_and_nothing_is_fetched() -> None:
    assert "<script" not in PAGE_TEMPLATE
    assert "http" not in PAGE_TEMPLATE.replace("http-equiv", "")
    assert not re.search(r"\bon\w+=", PAGE_TEMPLATE)
    assert not re.search(r"\bsrc=", PAGE_TEMPLATE)


def test_no_text_escapes_the_escaping() -> None:
    assert "|safe" not in PAGE_TEMPLATE.replace(" ", "")
    assert "autoescape" not in PAGE_TEMPLATE


def test_it_has_its_landmarks_and_one_main_heading() -> None:
    for mark in ('<html lang="en-GB">', "<header", "<nav", "<main>", "<footer>", 'class="skip"'):
        assert mark in PAGE_TEMPLATE
    assert PAGE_TEMPLATE.count("<h1") == 1
