from __future__ import annotations

from pathlib import Path

from wardwright.store.fonts import font_folder


def test_the_letters_and_their_licence_are_there() -> None:
    names = {path.name for path in Path(font_folder()).iterdir()}
    assert {f"LiberationSans-{style}.ttf" for style in ("Regular", "Bold", "Italic")} <= names
    assert "SIL OPEN FONT LICENSE" in (Path(font_folder()) / "LICENCE.txt").read_text(encoding="utf-8")
