"""What is said beside a camera's numbers."""

from __future__ import annotations

from common.houses import CATALOGUE, one_room
from common.rule_houses.cameras import AHEAD, FAR_DOOR, WIDE_PLOT
from wardwright.model.surroundings import Ground
from wardwright.questions.camera_notes import camera_notes, mask_words, task_word
from wardwright.rules.camera_view import view_of

SITE = one_room(devices=(AHEAD,), openings=(FAR_DOOR,), ground=Ground(boundary_m=WIDE_PLOT))
SHEET = CATALOGUE.sheet(AHEAD.sheet).camera
assert SHEET is not None


def test_too_coarse_for_any_task_is_a_word_too() -> None:
    assert task_word(CATALOGUE, "2014", 3.0) == "too coarse"
    assert task_word(CATALOGUE, "2025", 90.0) == "discern"


def test_a_camera_inside_is_told_nothing_of_the_boundary() -> None:
    view = view_of(SITE, AHEAD, SHEET)
    notes = camera_notes(SITE, CATALOGUE, view, sheet=SHEET, edition="2025", is_outside=False)
    assert not any("mask" in note for note in notes)
    assert "the densities of the edition of 2025 are from trade pages: check with the standard" in notes


def test_a_mask_of_no_use_says_what_to_do_first() -> None:
    view = view_of(SITE, AHEAD, SHEET)._replace(mask_share=0.9)
    assert mask_words(view) == "a mask would cover 90 % of the picture: turn the camera first"
