"""What the readers make of the given houses, held against counts taken of the same files by other means."""

from __future__ import annotations

from collections.abc import Iterator
from statistics import median

import shapely

from accuracy.rows import GIVEN, Row
from common.given_houses import HOMES
from common.plan_homes import read_home
from wardwright.intake.ifc.reading import read_ifc
from wardwright.model.fabric import Space
from wardwright.model.site import Site

COUNTED = "the README beside the files, counted there with other tools"
EXACT = "a count"
# What each file holds of what our model keeps: doors, windows and rooflights, spaces that are rooms, stairs.
IFC = {
    "AC20-FZK-Haus": (5, 11, 7, 1),
    "Duplex_A_20110907": (14, 24, 20, 2),
    "SampleHouse4": (3, 4, 3, 0),
}
KINDS = ("doors", "windows and rooflights", "spaces that are rooms", "stairs")


def accuracy_rows() -> Iterator[Row]:
    """The rows for docs/accuracy.md."""
    for name, expected in IFC.items():
        site = _site(name)
        for kind, count, computed in zip(KINDS, expected, _counts(site), strict=True):
            yield Row(f"{name}: {kind} [-]", COUNTED, count, computed, 0.0, EXACT, "outside fact")
    fzk = _site("AC20-FZK-Haus")
    yield Row(
        "AC20-FZK-Haus: floor area of the ground floor [m2]", COUNTED, 101.0, _area(fzk, "erdgeschoss"), 0.6,
        "given to the whole square metre", "outside fact",
    )  # fmt: skip
    yield Row(
        "AC20-FZK-Haus: ring of the loft's walls [m2]", COUNTED, 107.0, _area(fzk, "dachgeschoss"), 0.6,
        "given to the whole square metre", "outside fact",
    )  # fmt: skip
    yield Row(
        "AC20-FZK-Haus: true north, turned from up the plan [deg]", COUNTED, 50.0, abs(fzk.place.north_deg or 0.0),
        0.5, "given to the whole degree", "outside fact",
    )  # fmt: skip
    yield from _homes()


def _homes() -> Iterator[Row]:
    homes = [read_home(GIVEN / "plans" / "homes" / f"{name}.json") for name in HOMES]
    openings = [opening for home in homes for opening in home.site.openings]
    # Where the file has no types of room, which of them are balconies is our guess: the count there took all.
    sizes = [
        sum(_size(s) for s in home.site.spaces if s.use != "balcony" or home.oddities.without_names)
        for home in homes
    ]
    facts = (
        ("homes brought in [-]", 40, len(homes), 0.0, EXACT),
        ("doors [-]", 282, sum(o.kind == "door" for o in openings), 0.0, EXACT),
        ("entrance doors [-]", 49, sum(o.is_entry_door for o in openings), 0.0, EXACT),
        ("windows [-]", 181, sum(o.kind == "window" for o in openings), 0.0, EXACT),
        (
            "homes with walls off the axes [-]", 17, sum(home.oddities.off_axes for home in homes), 0.0, EXACT,
        ),
        (
            "rooms over 2 m2 that no door leads into [-]", 4, sum(len(home.oddities.doorless) for home in homes),
            0.0, EXACT,
        ),
        (
            "rooms whose ring is no valid polygon [-]", 1, sum(len(home.oddities.repaired) for home in homes),
            0.0, EXACT,
        ),
        ("size of the middle home [m2]", 65.0, median(sizes), 1.5, "given to the whole metre; of rings, not areas"),
        ("size of the smallest home [m2]", 40.0, min(sizes), 1.5, "the same"),
        ("size of the largest home [m2]", 127.0, max(sizes), 1.5, "the same"),
    )  # fmt: skip
    for quantity, expected, computed, tolerance, why in facts:
        yield Row(f"the given homes: {quantity}", COUNTED, expected, computed, tolerance, why, "outside fact")


def _site(name: str) -> Site:
    site, _ = read_ifc((GIVEN / "houses" / f"{name}.ifc").read_bytes(), where=f"{name}.ifc")
    return site


def _counts(site: Site) -> tuple[int, ...]:
    # Panes of curtain walls are no windows of the file.
    doors = sum(o.kind in {"door", "garage-door"} for o in site.openings)
    glass = {wall.id for wall in site.walls if wall.construction == "glass-wall"}
    windows = sum(o.kind in {"window", "rooflight"} and o.wall not in glass for o in site.openings)
    return doors, windows, len(site.spaces), len(site.stairs)


def _area(site: Site, storey: str) -> float:
    return sum(_size(space) for space in site.spaces if space.storey == storey)


def _size(space: Space) -> float:
    return float(shapely.Polygon(space.outline_m).area)
