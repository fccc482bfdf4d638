"""Shock and glass-break detectors that would notice a way in at the opening itself, where nothing does."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import USUAL_MOUNTS, Device, OpeningMount, WallMount
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.opening import Opening
from wardwright.model.programme import Behaviour
from wardwright.model.site import Site
from wardwright.rules.at_the_opening import notices_at_the_opening
from wardwright.rules.panes_in_earshot import HEIGHT_M, nearest_hearing_spot
from wardwright.trials.ways_in import WayIn

Values = tuple[tuple[str, str | float | int | bool], ...]
"""Names and values of what would be added."""
Proposed = tuple[Values, Device]


def watches_to_add(
    house: Site,
    catalogue: Catalogue,
    heard: tuple[tuple[Device, Behaviour], ...],
    *,
    way: WayIn,
    device_id: str,
) -> tuple[Proposed, ...]:
    """The cheapest shock and the cheapest glass-break detector that would notice a way in, the cheaper one first.

    Parameters
    ----------
    house : Site
        The bare house.
    catalogue : Catalogue
        Sheets to choose from.
    heard : tuple of (Device, Behaviour)
        The detectors there are.
    way : WayIn
        The way in.
    device_id : str
        What the new one is to be called.

    Returns
    -------
    tuple of (Values, Device)
        Empty where one that can alarm notices the way in at its opening already.
    """
    is_noticed = any(
        behaviour.alarms
        and notices_at_the_opening(house, catalogue, device, opening=way.opening, manner=way.manner)
        for device, behaviour in heard
    )
    return () if is_noticed else _proposed(house, catalogue, way, device_id=device_id)


@lru_cache(maxsize=512)
def _proposed(house: Site, catalogue: Catalogue, way: WayIn, *, device_id: str) -> tuple[Proposed, ...]:
    found: dict[str, Proposed] = {}
    for row in sorted(catalogue.sheets, key=lambda one: one.cheapest_first):
        if row.kind in found:
            continue
        for values, device in _placed(house, row, way.opening, device_id=device_id):
            if notices_at_the_opening(house, catalogue, device, opening=way.opening, manner=way.manner):
                found[row.kind] = ((("sheet", row.id), ("behaviour", "instant"), *values), device)
    return tuple(found.values())


def _placed(house: Site, row: DeviceSheet, opening: Opening, *, device_id: str) -> Iterator[Proposed]:
    """A device of a sheet where it would go for an opening: a shock detector on it, a glass-break one in its room."""
    if row.kind == "shock-detector" and "opening" in (row.mounts or USUAL_MOUNTS[row.kind]):
        mount = OpeningMount(opening=opening.id)
        yield (), Device(id=device_id, name=f"{opening.name} shock", sheet=row.id, mount=mount)
    spot = nearest_hearing_spot(house, row, opening) if row.kind == "glass-break-detector" else None
    if spot is not None:
        on_wall = WallMount(wall=spot.wall, side=spot.side, offset_m=spot.offset_m, height_m=HEIGHT_M)
        name = f"{opening.name} glass-break"
        yield spot.values(HEIGHT_M), Device(id=device_id, name=name, sheet=row.id, mount=on_wall)
