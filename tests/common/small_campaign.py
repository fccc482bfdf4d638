"""A hall between a kitchen and a study with an alarm that can be reckoned by hand, and a world with few chances."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from common.houses import CATALOGUE, on_floor, on_opening, on_wall, two_rooms_and_hall, zone
from wardwright.model.catalogue import Catalogue
from wardwright.model.household import Target
from wardwright.model.programme import Programme
from wardwright.model.site import Site

STILL: dict[str, tuple[float, float, float]] = {
    "pace-hurried": (2.5, 2.5, 2.5),
    "pass-door": (1.0, 1.0, 1.0),
    "stairs-share": (0.5, 0.5, 0.5),
    "climb-in": (5.0, 3.0, 7.0),
    "break-control-unit": (10.0, 6.0, 14.0),
    "radio-delay": (1.0, 0.7, 1.3),
    "message-time": (10.0, 6.0, 14.0),
    "sounder-start": (0.0, 0.0, 0.0),
    "stay": (1e6, 1e6, 1e6),
    "share-cautious": (0.0, 0.0, 0.0),
    "share-through-glass": (0.0, 0.0, 0.0),
    "share-doors-as-told": (1.0, 1.0, 1.0),
    "chance-contact-tells": (0.8, 0.8, 0.8),
}
"""Normal times with as much on either side, nothing else uncertain: value, low, high."""


def world(figures: Mapping[str, tuple[float, float, float]]) -> Catalogue:
    """The catalogue with some of its figures replaced."""
    rows = tuple(
        row.model_copy(update=dict(zip(("value", "low", "high"), figures[row.id], strict=True)))
        if row.id in figures
        else row
        for row in CATALOGUE.figures
    )
    assert figures.keys() <= {row.id for row in rows}
    return CATALOGUE.model_copy(update={"figures": rows})


def fitted_hall(**parts: Any) -> Site:
    """A unit in the hall, contacts on the kitchen's window and on its door, both instant; nothing else."""
    usual: dict[str, Any] = {
        "devices": (
            on_floor("unit", "unit", 4.6, 1.0, 1.5),
            on_opening("window-contact", "kitchen-window"),
            on_opening("door-contact", "kitchen-door"),
        ),
        "zones": (zone(1, "window", "window-contact"), zone(2, "door", "door-contact")),
        "programme": Programme(entry_time_s=30.0, abort_delay_s=0.0),
    }
    return two_rooms_and_hall(**(usual | parts))


def watched_hall(**parts: Any) -> Site:
    """The same with movement detectors in kitchen and hall, an entry door with its contact, and a target."""
    usual: dict[str, Any] = {
        "devices": (
            on_floor("unit", "unit", 9.6, 1.0, 1.5),
            on_opening("window-contact", "kitchen-window"),
            on_opening("front-contact", "front-door"),
            on_wall("hall-fan", "fan", "north", 5.0),
            on_wall("kitchen-fan", "fan", "south", 0.6),
            on_wall("bell", "sounder", "study-wall", 2.0, side="right"),
        ),
        "zones": (
            zone(1, "front", "front-contact", behaviour="entry-exit"),
            zone(2, "hall", "hall-fan", behaviour="entry-route"),
            zone(3, "kitchen", "kitchen-fan"),
            zone(4, "window", "window-contact"),
        ),
        "targets": (
            Target(id="silver", name="silver", space="study", at_m=(9.5, 5.0)),
            Target(id="tools", name="tools", space="kitchen"),
        ),
    }
    return two_rooms_and_hall(**(usual | parts))
