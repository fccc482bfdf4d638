from __future__ import annotations

from pathlib import Path

from fontTools.ttLib import TTFont

from wardwright.documents.writers.letters import LETTERS, SIGN, shown
from wardwright.store.fonts import font_folder


def test_every_letter_is_in_every_style_of_the_fonts() -> None:
    paths = sorted(Path(font_folder()).glob("*.ttf"))
    assert len(paths) == 3
    for path in paths:
        with TTFont(path) as font:
            assert set(font.getBestCmap()) >= LETTERS
    assert ord(SIGN) in LETTERS


def test_what_cannot_be_shown_is_a_sign_and_lines_stay() -> None:
    assert shown("a\n\t\x00\u5ba2\U0001f642b") == f"a\n\t{SIGN * 3}b"
