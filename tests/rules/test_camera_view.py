"""What a camera shows and sees: tasks by edition, masks, and other ways to hang it."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, one_room
from common.rule_houses.cameras import AHEAD, DOOR, FAR_DOOR, OUT, PLOT, WIDE_PLOT
from wardwright.model.surroundings import Ground
from wardwright.rules.camera_view import face_task, mask_mend, task_of, variants, view_of

SHEET = CATALOGUE.sheet("camera-outside").camera
assert SHEET is not None


@pytest.mark.parametrize(
    ("density", "words"),
    [(10.0, (None, None)), (130.0, ("recognise", "perceive")), (250.0, ("identify", "characterise"))],
)
def test_task_words_are_the_editions_own(density: float, words: tuple[str | None, str | None]) -> None:
    found = tuple(task_of(CATALOGUE, edition, density) for edition in ("2014", "2025"))
    assert tuple(None if one is None else one.name for one in found) == words


def test_a_known_face_is_told_from() -> None:
    tasks = (face_task(CATALOGUE, "2014"), face_task(CATALOGUE, "2025"))
    assert [one and one.density_px_m for one in tasks] == [125.0, 250.0]


def test_a_mask_covers_what_is_beyond_from_above() -> None:
    site = one_room(devices=(AHEAD,), openings=(FAR_DOOR,), ground=Ground(boundary_m=WIDE_PLOT))
    camera = AHEAD.model_copy(update={"tilt_deg": 20.0})
    view = view_of(site, camera, SHEET)
    assert view.beyond_m2 is not None
    assert view.beyond_m2 > 0.0
    assert (view.mask[0], view.mask[-1]) == ((0.0, 0.0), (1.0, 0.0))
    assert 0.0 < view.mask_share < 0.5
    assert view.is_mask_of_use
    assert str(dict(mask_mend(camera, view).values)["mask"]).startswith("0,0 ")


def test_a_mask_over_most_of_the_picture_is_no_cure() -> None:
    site = one_room(
        devices=(OUT,), openings=(DOOR,), ground=Ground(boundary_m=((-1, -1), (6, -1), (6, 5), (-1, 5)))
    )
    view = view_of(site, OUT.model_copy(update={"heading_deg": -90.0}), SHEET)
    assert view.mask_share > 0.7
    assert not view.is_mask_of_use


def test_within_the_boundary_nothing_is_masked() -> None:
    wide = ((-60.0, -60.0), (60.0, -60.0), (60.0, 60.0), (-60.0, 60.0))
    view = view_of(one_room(devices=(OUT,), ground=Ground(boundary_m=wide)), OUT, SHEET)
    assert (view.mask, view.beyond_m2) == ((), 0.0)


def test_the_place_that_decides_is_the_entry_door() -> None:
    camera = OUT.model_copy(update={"heading_deg": -10.0, "tilt_deg": 30.0})
    view = view_of(
        one_room(devices=(camera,), openings=(DOOR,), ground=Ground(boundary_m=PLOT)), camera, SHEET
    )
    assert view.deciding is not None
    assert view.deciding.named.ident == "front-door"


def test_ways_to_hang_it() -> None:
    found = [(action, dict(values)) for action, values, _ in variants(one_room(), CATALOGUE, OUT)]
    assert [action for action, _ in found] == ["turn-device"] * 2 + ["move-device"]
    assert found[0][1] == {"heading_deg": -50.0, "tilt_deg": 30.0}
    assert found[-1][1] == {"height_m": 2.2}
