"""What the work that a mend asks for is dangerous with, so that a caution stands beside it."""

from __future__ import annotations

from typing import Literal, get_args

from wardwright.model.catalogue import Catalogue
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.site import Site
from wardwright.rules.finding import Mend

Danger = Literal["mains", "drilling", "old-coating", "ladder", "way-out", "fire"]
"""`drilling`: into a wall or ceiling where services may run. `way-out`: by which people leave in a fire."""

FIXED_ANEW = frozenset({"add-device", "move-device", "change-mount", "replace-device", "remove-device"})
"""Mends that undo or do up a device."""
FIRE_KINDS = frozenset({"smoke-alarm", "heat-alarm", "co-alarm"})
LEAVES = frozenset({"change-lock", "keep-shut", "leave-open"})


def dangers_of(site: Site, catalogue: Catalogue, mend: Mend) -> tuple[Danger, ...]:
    """What somebody who carries a mend out must beware of.

    Parameters
    ----------
    site : Site
        Says how each device is mounted now.
    catalogue : Catalogue
        Says what runs on mains, and what hangs outside.
    mend : Mend
        The mend.

    Returns
    -------
    tuple of str
        In the order of the cautions; empty for what is done at the keypad, or by telling a fact.
    """
    values = dict(mend.values)
    device = next((one for one in site.devices if one.id == mend.subject), None)
    ident = values.get("sheet", device.sheet if device is not None else None)
    sheet = None if ident is None else next((one for one in catalogue.sheets if one.id == ident), None)
    on = values.get("on", device.mount.on if device is not None else "")
    is_fixed_anew = mend.action in FIXED_ANEW
    is_on_fabric = on in ("wall", "ceiling") or "near" in values
    found = {
        "mains": mend.action == "add-light" or (is_fixed_anew and _runs_on_mains(sheet)),
        "drilling": is_fixed_anew and is_on_fabric,
        "old-coating": is_fixed_anew and is_on_fabric,
        "ladder": mend.action == "add-light"
        or ((is_fixed_anew or mend.action == "turn-device") and _is_high(sheet, on=str(on))),
        "way-out": mend.action in LEAVES,
        "fire": is_fixed_anew and sheet is not None and sheet.kind in FIRE_KINDS,
    }
    return tuple(one for one in get_args(Danger) if found[one])


def _runs_on_mains(sheet: DeviceSheet | None) -> bool:
    return sheet is not None and sheet.power == "mains"


def _is_high(sheet: DeviceSheet | None, *, on: str) -> bool:
    """Whether one climbs to it: a ceiling, or an outside wall."""
    return on == "ceiling" or (sheet is not None and sheet.is_outside)
