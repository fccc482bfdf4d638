"""Tasks: each edition's words, denser and denser."""

from __future__ import annotations

import pytest

from wardwright.model.camera_rows import CameraEdition
from wardwright.store.catalogue import load_catalogue


@pytest.mark.parametrize(("edition", "count"), [("2014", 6), ("2025", 7)])
def test_each_edition_has_its_words_and_one_that_tells_a_face(edition: CameraEdition, count: int) -> None:
    tasks = load_catalogue().tasks_of(edition)
    densities = [task.density_px_m for task in tasks]
    assert len(tasks) == len({task.name for task in tasks}) == count
    assert densities == sorted(set(densities))
    assert sum(task.shows_a_face for task in tasks) == 1
