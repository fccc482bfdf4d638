"""What is tried so that a detector can stay with the animals in."""

from __future__ import annotations

from typing import Any

from common.houses import CATALOGUE, on_wall, one_room, pet
from common.rule_houses.movement import PASSING_PETS, SIDEBOARD
from wardwright.model.device import Device
from wardwright.questions.pet_changes import MOVED, Change, Trial, changes
from wardwright.rules.animals import animals
from wardwright.trials.pet_room import room_for


def tried(device: Device = PASSING_PETS, **parts: Any) -> list[Change]:
    site = one_room(**({"devices": (device,), "fixtures": (SIDEBOARD,), "pets": (pet("cat"),)} | parts))
    sheet = CATALOGUE.sheet(device.sheet).movement
    assert sheet is not None
    household = animals(site, CATALOGUE)
    now = tuple(room_for(site.bare, CATALOGUE, device, sheet=sheet, animal=one) for one in household)
    return list(changes(site.bare, CATALOGUE, Trial(device, sheet, household, device.sheet), now=now))


def test_the_thing_that_it_stands_on_is_tried_away() -> None:
    (moved,) = [one for one in tried() if one.action == "move-thing"]
    assert (moved.subject, moved.trial.without) == (SIDEBOARD.id, frozenset({SIDEBOARD.id}))
    assert "worktop" not in MOVED
    fixed = SIDEBOARD.model_copy(update={"kind": "worktop"})
    assert not [one for one in tried(fixtures=(fixed,)) if one.action == "move-thing"]


def test_what_is_played_is_what_the_mend_says() -> None:
    for one in tried():
        values = dict(one.values)
        if one.action == "change-mount":
            assert one.trial.device.mount.height_m == values["height_m"]  # type: ignore[union-attr]
        if one.action == "turn-device":
            assert one.trial.device.tilt_deg == values["tilt_deg"]
        if one.action == "replace-device":
            assert one.trial.device.sheet == values["sheet"]


def test_it_is_moved_only_where_its_sheet_passes_all() -> None:
    assert "move-device" in [one.action for one in tried()]
    silent = on_wall("fan", "fan", "west", 2.15)
    assert "move-device" not in [one.action for one in tried(silent)]
