"""Plausible houses of our own, drawn by seed: rooms in rows on one or two storeys, doors, windows, stairs, a kit."""

from __future__ import annotations

import numpy as np

from common.sensible_kit import with_sensible_kit
from wardwright.model.catalogue import Catalogue
from wardwright.model.fabric import Space, Stair, Storey, Wall
from wardwright.model.opening import Opening
from wardwright.model.place import Place
from wardwright.model.site import Site

OUTER_M, INNER_M = 0.3, 0.1
UPSTAIRS = ("bedroom", "bathroom", "study", "bedroom", "store")
DOWNSTAIRS = ("living", "kitchen", "dining", "study", "utility")
HABITS = ("shut", "ajar", "open")


def random_house(seed: int, catalogue: Catalogue) -> Site:
    """One house with a sensible kit; the same seed gives the same house.

    A hall runs north through the middle; rooms lie to its west and east. With two storeys a flight leads up the hall.
    """
    rng = np.random.default_rng([20_261_126, seed])
    storeys = int(rng.integers(1, 3))
    wide, deep = float(rng.uniform(1.9, 2.6)), float(rng.uniform(7.0, 11.0))
    west, east = (float(rng.uniform(2.8, 4.8)) for _ in range(2))
    spaces: list[Space] = []
    walls: list[Wall] = []
    openings: list[Opening] = []
    for level in range(storeys):
        _storey(rng, level, (west, wide, east, deep), spaces=spaces, walls=walls, openings=openings)
    stairs = ()
    if storeys == 2:
        line = ((west + wide - 0.55, 1.6), (west + wide - 0.55, 1.6 + 3.2))
        stairs = (Stair(id="flight", lower="s0", upper="s1", line_m=line, width_m=0.8),)
    bare = Site(
        name=f"random house {seed}",
        place=Place(country=rng.choice(["GB", "DE", "US"]).item()),
        storeys=tuple(
            Storey(id=f"s{level}", name=f"storey {level}", elevation_m=2.7 * level, height_m=2.4)
            for level in range(storeys)
        ),
        spaces=tuple(spaces),
        walls=tuple(walls),
        openings=tuple(openings),
        stairs=stairs,
    )
    site = with_sensible_kit(bare, catalogue)
    times = {
        "entry_time_s": float(rng.choice([10.0, 30.0, 45.0])),
        "abort_delay_s": float(rng.choice([0.0, 15.0])),
    }
    return site.model_copy(update={"programme": site.programme.model_copy(update=times)})


def _storey(
    rng: np.random.Generator,
    level: int,
    plan: tuple[float, float, float, float],
    *,
    spaces: list[Space],
    walls: list[Wall],
    openings: list[Opening],
) -> None:
    west, wide, east, deep = plan
    storey, half = f"s{level}", OUTER_M / 2.0
    right = west + wide + east + 2 * INNER_M
    hall = (west + INNER_M, west + INNER_M + wide)

    def wall(name: str, a: tuple[float, float], b: tuple[float, float], thick: float) -> str:
        walls.append(Wall(id=f"{storey}-{name}", storey=storey, line_m=(a, b), thickness_m=thick))
        return walls[-1].id

    low, high = -half, right + half
    south = wall("south", (low, low), (high, low), OUTER_M)
    sides = {
        "east": wall("east", (high, low), (high, deep + half), OUTER_M),
        "west": wall("west", (low, deep + half), (low, low), OUTER_M),
    }
    north = wall("north", (high, deep + half), (low, deep + half), OUTER_M)
    spines = {
        "west": wall("spine-west", (hall[0] - INNER_M / 2, 0.0), (hall[0] - INNER_M / 2, deep), INNER_M),
        "east": wall("spine-east", (hall[1] + INNER_M / 2, 0.0), (hall[1] + INNER_M / 2, deep), INNER_M),
    }
    _space(spaces, storey, "hall", (hall[0], 0.0, hall[1], deep), "landing" if level else "hall")
    uses = list(UPSTAIRS if level else DOWNSTAIRS)
    rng.shuffle(uses)
    for side, (x0, x1) in (("west", (0.0, west)), ("east", (hall[1] + INNER_M, right))):
        count = int(rng.integers(1, 3))
        cut = float(rng.uniform(0.4, 0.6)) * deep
        ends = [(0.0, deep)] if count == 1 else [(0.0, cut - INNER_M / 2), (cut + INNER_M / 2, deep)]
        if count == 2:
            wall(f"cross-{side}", (x0, cut), (x1, cut), INNER_M)
        for number, (y0, y1) in enumerate(ends):
            name = f"{side}-{number}"
            _space(spaces, storey, name, (x0, y0, x1, y1), uses.pop())
            at = float(rng.uniform(y0 + 0.7, y1 - 0.7))
            habit = str(rng.choice(HABITS))
            openings.append(
                _opening(
                    f"{storey}-door-{name}", "door", spines[side], at, hinge="start", habit=habit, width_m=0.8
                )
            )
            if rng.random() < 0.8:
                middle = (y0 + y1) / 2.0
                along = middle + half if side == "east" else deep + half - middle
                openings.append(_window(rng, f"{storey}-window-{name}", sides[side], along))
    if level == 0:
        door = half + (hall[0] + hall[1]) / 2.0
        openings.append(
            _opening("front-door", "door", south, door, is_entry_door=True, lock="deadlock", width_m=0.9)
        )
        if rng.random() < 0.6:
            back = half + right - west / 2.0
            openings.append(
                _opening(
                    "garden-door", "door", north, back, lock="latch", glazing="double-plain", width_m=0.9
                )
            )


def _space(
    spaces: list[Space], storey: str, name: str, box: tuple[float, float, float, float], use: str
) -> None:
    x0, y0, x1, y1 = box
    outline = ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
    told = {
        "id": f"{storey}-{name}",
        "name": f"{use} {name}",
        "storey": storey,
        "use": use,
        "outline_m": outline,
    }
    spaces.append(Space.model_validate(told))


def _window(rng: np.random.Generator, name: str, wall: str, along: float) -> Opening:
    return _opening(
        name, "window", wall, along,
        width_m=float(rng.uniform(0.6, 1.4)), sill_m=0.9, head_m=2.1, lock="latch", glazing="double-plain",
    )  # fmt: skip


def _opening(name: str, kind: str, wall: str, along: float, **facts: object) -> Opening:
    told = {"id": name, "name": name.replace("-", " "), "kind": kind, "wall": wall, "offset_m": along}
    return Opening.model_validate(told | facts)
