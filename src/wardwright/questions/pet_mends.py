"""What would let a detector stay with the animals in: each change tried on the model before it is named."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, WallMount
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.estimate import Estimate
from wardwright.model.placement import is_way_in, sides_of_opening, space_at, standing
from wardwright.model.site import Site
from wardwright.questions.answer import WORST_FIRST
from wardwright.questions.pet_verdicts import verdict_of, worst_of
from wardwright.rules.animals import Roaming
from wardwright.rules.detector_spots import moved_to_better_spot
from wardwright.rules.finding import Mend
from wardwright.rules.like_sheets import Values, hung_for, is_alike
from wardwright.trials.pet_room import PetRoom, leaves_enough, room_for
from wardwright.trials.pets import door_between

TILT_STEPS_DEG = (-1.0, -2.0)
"""Turned up by so much. [deg] (assumption)"""
SHOULDER_M = 1.4
"""It is not turned up so far that a row of its zones stays above this within its reach: it would look over people.
[m] (assumption)"""
MOVED = ("bed", "sofa", "table", "chair", "cupboard", "shelf", "appliance", "screen", "other")
"""What stands where it was put: a worktop or a radiator is not moved for a cat."""
MOST = 4
"""How many changes are named. [-]"""


class _Trial(NamedTuple):
    device: Device
    sheet: MovementSheet
    household: tuple[Roaming, ...]
    was: str
    """Id of the sheet that it has."""
    shut: frozenset[str] = frozenset()
    without: frozenset[str] = frozenset()


_Change = tuple[str, str, Values, _Trial]
# Action, subject and values of a change, and what is then to be played.


def pet_mends(
    house: Site,
    catalogue: Catalogue,
    device: Device,
    *,
    sheet: MovementSheet,
    household: tuple[Roaming, ...],
    has_contact: frozenset[str],
) -> tuple[Mend, ...]:
    """Changes after which one detector can stay with all animals in, or with less doubt.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        The sheets to choose from.
    device : Device
        The detector.
    sheet : MovementSheet
        Its sheet.
    household : tuple of Roaming
        The animals.
    has_contact : frozenset of str
        Ids of the openings that an opening contact watches already.

    Returns
    -------
    tuple of Mend
        Those that leave no doubt first; where none does, watching its space by contacts comes last.
    """
    as_it_is = _Trial(device, sheet, household, device.sheet)
    now = _played(house, catalogue, as_it_is)
    rank_now = WORST_FIRST.index(verdict_of(worst_of(now)))
    tried: list[tuple[int, Mend]] = []
    for action, subject, values, trial in _changes(house, catalogue, as_it_is, now=now):
        after = worst_of(_played(house, catalogue, trial))
        rank = WORST_FIRST.index(verdict_of(after))
        if rank > rank_now:
            gain = Estimate.model_validate(after.estimate.model_dump() | {"drivers": ()})
            tried.append(
                (
                    rank,
                    Mend.model_validate(
                        {"action": action, "subject": subject, "values": values, "gain": gain}
                    ),
                )
            )
    tried.sort(key=lambda one: -one[0])
    found = [mend for _, mend in tried[:MOST]]
    if not any(WORST_FIRST[rank] == "good" for rank, _ in tried):
        contacts = _contacts(house, catalogue, device)
        found += [one for one in contacts if one.subject not in has_contact]
    return tuple(found)


def _played(house: Site, catalogue: Catalogue, trial: _Trial) -> tuple[PetRoom, ...]:
    return tuple(
        room_for(
            house,
            catalogue,
            trial.device,
            sheet=trial.sheet,
            animal=animal,
            shut=trial.shut,
            without=trial.without,
        )
        for animal in trial.household
    )


def _changes(
    house: Site, catalogue: Catalogue, trial: _Trial, *, now: tuple[PetRoom, ...]
) -> Iterator[_Change]:
    """What could be changed, and what is then to be played."""
    yield from _in_the_house(house, trial, now=now)
    for row in sorted(catalogue.sheets, key=lambda one: one.cheapest_first):
        if row.movement is None or row.id == trial.device.sheet:
            continue
        if is_alike(row, row.movement, trial.device, sheet=trial.sheet):
            values, hung = hung_for(trial.device, row.movement)
            like = hung.model_copy(update={"sheet": row.id})
            changed = trial._replace(device=like, sheet=row.movement)
            yield "replace-device", like.id, (("sheet", row.id), *values), changed
            if verdict_of(worst_of(_played(house, catalogue, changed))) != "good":
                yield from _elsewhere(house, changed)
    yield from _hung_otherwise(trial)
    yield from _elsewhere(house, trial)


def _elsewhere(house: Site, trial: _Trial) -> Iterator[_Change]:
    """The nearest place on its space's walls from which it can stay, where its sheet passes all the animals."""

    def can_stay(moved: Device) -> bool:
        return all(
            leaves_enough(house, moved, sheet=trial.sheet, animal=animal) for animal in trial.household
        )

    if not all(animal.mass_kg <= trial.sheet.passes_animals_up_to_kg for animal in trial.household):
        return
    for mend in moved_to_better_spot(house, trial.device, trial.sheet, accepts=can_stay):
        moved = _moved(trial.device, dict(mend.values))
        if moved is None:
            continue
        if trial.device.sheet == trial.was:
            yield mend.action, moved.id, mend.values, trial._replace(device=moved)
        else:
            values = (("sheet", moved.sheet), *mend.values)
            yield "replace-device", moved.id, values, trial._replace(device=moved)


def _in_the_house(house: Site, trial: _Trial, *, now: tuple[PetRoom, ...]) -> Iterator[_Change]:
    """Doors kept shut, and things moved away."""
    for door in sorted({one.by for room in now for one in room.lets_in if one.is_door}):
        yield "keep-shut", door, (), trial._replace(shut=frozenset({door}))
    for door, household in _kept_out(house, trial, now=now):
        yield "keep-shut", door, (), trial._replace(household=household, shut=frozenset({door}))
    fixtures = {one.id for one in house.fixtures if one.kind in MOVED}
    for thing in sorted({top.thing or "" for room in now for top in room.breaks} & fixtures):
        yield "move-thing", thing, (), trial._replace(without=frozenset({thing}))


def _hung_otherwise(trial: _Trial) -> Iterator[_Change]:
    """As low and as high as its sheet allows, and turned up a little."""
    device, sheet = trial.device, trial.sheet
    if not isinstance(device.mount, WallMount):
        return
    for height in sorted({sheet.height_low_m, sheet.height_high_m} - {device.mount.height_m}):
        mount = device.mount.model_copy(update={"height_m": height})
        hung = device.model_copy(update={"mount": mount})
        yield "change-mount", device.id, (("height_m", height),), trial._replace(device=hung)
    for step in TILT_STEPS_DEG:
        tilt = device.tilt_deg + step
        if not _meets_people(device.mount.height_m, sheet, tilt_deg=tilt):
            continue
        turned = device.model_copy(update={"tilt_deg": tilt})
        yield "turn-device", device.id, (("tilt_deg", tilt),), trial._replace(device=turned)


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
    house: Site, trial: _Trial, *, now: tuple[PetRoom, ...]
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


def _contacts(house: Site, catalogue: Catalogue, device: Device) -> list[Mend]:
    """The cheapest contact on each way into its space that opens: what watches without looking at animals."""
    at = standing(house, device)
    space = space_at(house, at.storey, (at.x_m, at.y_m))
    rows = [one for one in catalogue.sheets if one.kind == "opening-contact"]
    if space is None or not rows:
        return []
    sheet = min(rows, key=lambda one: one.cheapest_first)
    return [
        Mend(action="add-device", subject=one.id, values=(("sheet", sheet.id), ("behaviour", "instant")))
        for one in sorted(house.openings, key=lambda one: one.id)
        if space.id in sides_of_opening(house, one)
        and is_way_in(house, one)
        and one.hinge != "fixed"
        and one.kind != "gap"
    ]
