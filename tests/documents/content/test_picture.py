from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from wardwright.documents.content.picture import race_picture, race_to_show
from wardwright.documents.drawing.recording import Hatch, Head, Text
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.answer import Answer

ROOT = Path(__file__).resolve().parents[3]


def test_the_race_with_the_longest_walk_is_shown(answers: tuple[Answer, ...]) -> None:
    assert race_to_show(answers) == race_to_show(answers[::-1]) == answers[1]
    assert race_to_show(answers[2:]) is None


def test_walk_race_and_seen_floor_are_on_one_sheet(
    site: Site, catalogue: Catalogue, answers: tuple[Answer, ...]
) -> None:
    drawing = race_picture(site, catalogue, answers[1], also=answers[3:4])
    texts = [verb.text for _, verb in drawing.own.strokes if isinstance(verb, Text)]
    assert "14 Tannery Row: kitchen window" in texts
    assert "0.2 s (\u22124.1 to 4.4 s)" in texts
    assert "control unit broken" in texts
    assert {v.style for _, v in drawing.own.strokes if isinstance(v, Hatch)} == {"seen", "possibly-seen"}
    assert [verb for _, verb in drawing.own.strokes if isinstance(verb, Head)]


def test_what_is_no_race_is_refused(site: Site, catalogue: Catalogue, answers: tuple[Answer, ...]) -> None:
    with pytest.raises(ValueError, match="back door is no race"):
        race_picture(site, catalogue, answers[2])


def test_the_picture_of_the_front_page_is_not_stale() -> None:
    command = [sys.executable, str(ROOT / "scripts" / "build-picture"), "--check"]
    run = subprocess.run(command, capture_output=True, text=True, check=False, timeout=300)
    assert run.returncode == 0, run.stdout + run.stderr
