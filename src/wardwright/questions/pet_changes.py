"""What could be changed so that a detector can stay with the animals in."""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import partial
from typing import NamedTuple

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, WallMount
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.site import Site
from wardwright.rules.animals import Roaming
from wardwright.rules.detector_spots import moved_to_better_spot
from wardwright.rules.like_sheets import Values, hung_for, is_alike
from wardwright.trials.pet_room import PetRoom
from wardwright.trials.pets import door_between
from wardwright.trials.room_left import room_left

TILT_STEPS_DEG = (-1.0, -2.0)
"""Turned up by so much. [deg] (assumption)"""
SHOULDER_M = 1.4
"""It is not turned up so far that a row of its zones stays above this within its reach: it would look over people.
[m] (assumption)"""
MOVED = ("bed", "sofa", "table", "chair", "cupboard", "shelf", "appliance", "screen", "other")
"""What stands where it was put: a worktop or a radiator is not moved for a cat."""


class Trial(NamedTuple):
    """What is played: a detector and the animals before it."""

    device: Device
    sheet: MovementSheet
    household: tuple[Roaming, ...]
    was: str
    """Id of the sheet that it has."""
    shut: frozenset[str] = frozenset()
    without: frozenset[str] = frozenset()


class Change(NamedTuple):
    """One change, as a mend names it, and what is then to be played."""

    action: str
    subject: str
    values: Values
    trial: Trial


def changes(house: Site, catalogue: Catalogue, trial: Trial, *, now: tuple[PetRoom, ...]) -> Iterator[Change]:
    """What could be changed, and what is then to be played.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        The sheets to choose from.
    trial : Trial
        The detector as it is.
    now : tuple of PetRoom
        Each of the animals before it.

    Yields
    ------
    Change
        First in the house, then another sheet, then how and where it hangs.
    """
    yield from _in_the_house(house, trial, now=now)
    for row in sorted(catalogue.sheets, key=lambda one: one.cheapest_first):
        if row.movement is None or row.id == trial.device.sheet:
            continue
        if is_alike(row, row.movement, trial.device, sheet=trial.sheet):
            values, hung = hung_for(trial.device, row.movement)
            like = hung.model_copy(update={"sheet": row.id})
            changed = trial._replace(device=like, sheet=row.movement)
            yield Change("replace-device", like.id, (("sheet", row.id), *values), changed)
            if not _can_stay(house, changed, like):
                yield from _elsewhere(house, changed)
    yield from _hung_otherwise(trial)
    yield from _elsewhere(house, trial)


def _elsewhere(house: Site, trial: Trial) -> Iterator[Change]:
    """The nearest place on its space's walls from which it can stay, where its sheet passes all the animals."""
    if not all(animal.mass_kg <= trial.sheet.passes_animals_up_to_kg for animal in trial.household):
        return
    mends = moved_to_better_spot(house, trial.device, trial.sheet, accepts=partial(_can_stay, house, trial))
    for mend in mends:
        moved = _moved(trial.device, dict(mend.values))
        if moved is None:
            continue
        if trial.device.sheet == trial.was:
            yield Change(mend.action, moved.id, mend.values, trial._replace(device=moved))
        else:
            values = (("sheet", moved.sheet), *mend.values)
            yield Change("replace-device", moved.id, values, trial._replace(device=moved))


def _can_stay(house: Site, trial: Trial, device: Device) -> bool:
    """Whether a detector of a trial's sheet leaves all animals enough."""
    return all(
        room_left(house, device, sheet=trial.sheet, animal=animal).is_enough for animal in trial.household
    )


def _in_the_house(house: Site, trial: Trial, *, now: tuple[PetRoom, ...]) -> Iterator[Change]:
    """Doors kept shut, and things moved away."""
    for door in sorted({one.by for room in now for one in room.lets_in if one.is_door}):
        yield Change("keep-shut", door, (), trial._replace(shut=frozenset({door})))
    for door, household in _kept_out(house, trial, now=now):
        yield Change("keep-shut", door, (), trial._replace(household=household, shut=frozenset({door})))
    fixtures = {one.id for one in house.fixtures if one.kind in MOVED}
    for thing in sorted({top.thing or "" for room in now for top in room.breaks} & fixtures):
        yield Change("move-thing", thing, (), trial._replace(without=frozenset({thing})))


def _hung_otherwise(trial: Trial) -> Iterator[Change]:
    """As low and as high as its sheet allows, and turned up a little."""
    device, sheet = trial.device, trial.sheet
    if not isinstance(device.mount, WallMount):
        return
    for height in sorted({sheet.height_low_m, sheet.height_high_m} - {device.mount.height_m}):
        mount = device.mount.model_copy(update={"height_m": height})
        hung = device.model_copy(update={"mount": mount})
        yield Change("change-mount", device.id, (("height_m", height),), trial._replace(device=hung))
    for step in TILT_STEPS_DEG:
        tilt = device.tilt_deg + step
        if not _meets_people(device.mount.height_m, sheet, tilt_deg=tilt):
            continue
        turned = device.model_copy(update={"tilt_deg": tilt})
        yield Change("turn-device", device.id, (("tilt_deg", tilt),), trial._replace(device=turned))


def _meets_people(height_m: float, sheet: MovementSheet, *, tilt_deg: float) -> bool:
    falls = (math.tan(math.radians(row.depression_deg + tilt_deg)) for row in sheet.rows)
    return all(height_m - sheet.reach_m * fall <= SHOULDER_M for fall in falls)


def _moved(device: Device, values: dict[str, str | float | int | bool]) -> Device | None:
    """A detector at the place that a mend names; None where that is not on a wall."""
    if values.pop("on", None) != "wall":
        return None
    heading = values.pop("heading_deg", device.heading_deg)
    mount = WallMount.model_validate(values)
    return device.model_copy(update={"mount": mount, "heading_deg": heading})


def _kept_out(
    house: Site, trial: Trial, *, now: tuple[PetRoom, ...]
) -> Iterator[tuple[str, tuple[Roaming, ...]]]:
    """The one door that keeps every animal out of a space where one stands in the zones, and the animals then."""
    spaces = {space for room in now for top in room.breaks for space in top.spaces}
    for space in sorted(spaces):
        kept = tuple(
            animal._replace(spaces=tuple(one for one in animal.spaces if one.id != space))
            for animal in trial.household
        )
        rooms = frozenset(one.id for animal in kept for one in animal.spaces)
        door = door_between(house, space, rooms)
        if door is not None and all(animal.spaces for animal in kept):
            yield door, kept
