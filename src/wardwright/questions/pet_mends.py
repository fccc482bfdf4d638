"""What would let a detector stay with the animals in: each change tried on the model before it is named."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from operator import itemgetter

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import MovementSheet
from wardwright.model.estimate import Estimate
from wardwright.model.placement import is_way_in, sides_of_opening, space_at, standing
from wardwright.model.site import Site
from wardwright.questions.answer import WORST_FIRST
from wardwright.questions.beaten_changes import beaten
from wardwright.questions.pet_changes import Change, Trial, changes
from wardwright.questions.pet_verdicts import decisive, settled, verdict_of, worst_of
from wardwright.rules.animals import Roaming
from wardwright.rules.finding import Mend
from wardwright.rules.perches import UnderZones
from wardwright.trials.pet_room import PetRoom
from wardwright.trials.pet_walks import trips
from wardwright.trials.room_left import Left, room_left

MOST = 4
"""How many changes are named. [-]"""


def pet_mends(
    house: Site,
    catalogue: Catalogue,
    device: Device,
    *,
    sheet: MovementSheet,
    now: tuple[PetRoom, ...],
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
    now : tuple of PetRoom
        Each of the animals before it as it is.
    has_contact : frozenset of str
        Ids of the openings that an opening contact watches already.

    Returns
    -------
    tuple of Mend
        Those that leave no doubt first; where none does, watching its space by contacts comes last.
    """
    as_it_is = Trial(device, sheet, tuple(room.animal for room in now), device.sheet)
    verdict = verdict_of(worst_of(now))
    every = tuple(changes(house, catalogue, as_it_is, now=now))
    no_better = beaten(house, catalogue, every, device=device, now=now, verdict=verdict)
    worth = [change for number, change in enumerate(every) if number not in no_better]
    tried = []
    for change, rank, room in _better(house, catalogue, worth, than=WORST_FIRST.index(verdict)):
        gain = Estimate.model_validate(room.model_dump() | {"drivers": ()})
        mend = {"action": change.action, "subject": change.subject, "values": change.values, "gain": gain}
        tried.append((rank, Mend.model_validate(mend)))
    tried.sort(key=lambda one: -one[0])
    found = [mend for _, mend in tried[:MOST]]
    if not any(WORST_FIRST[rank] == "good" for rank, _ in tried):
        contacts = _contacts(house, catalogue, device)
        found += [one for one in contacts if one.subject not in has_contact]
    return tuple(found)


def _better(
    house: Site, catalogue: Catalogue, tried: Iterable[Change], *, than: int
) -> Iterator[tuple[Change, int, Estimate]]:
    """The changes that leave all animals a better verdict than one of some rank: each with its own, and the room."""
    could = []
    for change in tried:
        lefts = tuple(_left_to(house, change.trial, animal) for animal in change.trial.household)
        # Whatever the walks of one with too little room would bring, it is no more than `thin`.
        if all(left.is_enough for left in lefts) or WORST_FIRST.index("thin") > than:
            could.append((change, lefts))
    tripped = _tripped(house, catalogue, could)
    for number, (change, lefts) in enumerate(could):
        if number not in tripped:
            ranked = [
                (WORST_FIRST.index(settled(one) or "thin"), one.estimate.value, one.animal.pet.id, one)
                for one in lefts
            ]
            rank, *_, worst = min(ranked, key=itemgetter(0, 1, 2))
            yield change, rank, worst.estimate


def _tripped(house: Site, catalogue: Catalogue, could: Sequence[tuple[Change, tuple[Left, ...]]]) -> set[int]:
    """The numbers of those changes after which some animal still trips the detector where that is `bad`."""
    alike: dict[tuple[str, Roaming], list[tuple[int, Device, tuple[UnderZones, ...]]]] = {}
    for number, (change, lefts) in enumerate(could):
        for left in lefts:
            if tops := decisive(left):
                device = change.trial.device
                alike.setdefault((device.sheet, left.animal), []).append((number, device, tops))
    found: set[int] = set()
    for (_, animal), asked in alike.items():
        left_over = [one for one in asked if one[0] not in found]
        walked = trips(house, catalogue, [one[1:] for one in left_over], animal=animal)
        found.update(one[0] for one, does in zip(left_over, walked, strict=True) if does)
    return found


def _left_to(house: Site, trial: Trial, animal: Roaming) -> Left:
    return room_left(
        house, trial.device, sheet=trial.sheet, animal=animal, shut=trial.shut, without=trial.without
    )


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
