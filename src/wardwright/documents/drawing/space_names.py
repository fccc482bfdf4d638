"""Names of spaces on the plan: whole, short, turned or numbered, whichever is legible where the space is."""

from __future__ import annotations

from collections import Counter
from typing import NamedTuple

import shapely

from wardwright.documents.drawing.inks import INKS, text_width_mm
from wardwright.documents.drawing.labels import Board
from wardwright.documents.drawing.recording import Recorder
from wardwright.documents.drawing.sheet import Sheet
from wardwright.model.fabric import Space
from wardwright.model.record import Point2
from wardwright.model.site import Site

STYLES = ("space-name", "space-name-small", "space-name-tiny")
"""Sizes of letters, the largest first; the last is the smallest that is legible."""
LINE = 1.2
"""Height of a line as a share of its letters' size. [-]"""
GOOD = 0.16
"""A name is set where it costs no more than this. [-]"""
FAIR = 0.25
"""It is not turned where it costs no more than this as it is. [-]"""
PAD_MM = 0.8
"""Kept free at both ends of a name together. [mm]"""
WORST = 0.35
"""A name that would cost more than this is a number instead. [-]"""
OUTSIDE = 5.0
"""Cost of lying outside its own space. [-]"""
TRIED = 5
"""Places that are tried along each side of a space. [-]"""


class Setting(NamedTuple):
    """One way of setting a name."""

    style: str
    lines: tuple[str, ...]
    area: str
    turn_deg: float

    def size_mm(self) -> tuple[float, float]:
        """Width and height on paper, as it lies."""
        wide = max(text_width_mm(self.style, line) for line in (*self.lines, self.area)) + PAD_MM
        high = (len(self.lines) + bool(self.area)) * INKS[self.style].size_mm * LINE
        return (high, wide) if self.turn_deg else (wide, high)


def short_names(site: Site) -> dict[str, str]:
    """What each of our spaces is called on a plan: without a code in brackets where no other is called so."""
    ours = [space for space in site.spaces if space.belongs == "ours"]
    often = Counter(short_name(space.name) for space in ours)
    return {s.id: short_name(s.name) if often[short_name(s.name)] == 1 else s.name for s in ours}


def short_name(name: str) -> str:
    """A name without what stands in brackets at its end.

    Examples
    --------
    >>> short_name("Bathroom 1 (A104)")
    'Bathroom 1'
    """
    head, bracket, rest = name.rpartition(" (")
    return head if bracket and rest.endswith(")") and head else name


def draw_names(
    recorder: Recorder, site: Site, *, storey_id: str, board: Board, sheet: Sheet
) -> tuple[tuple[str, str], ...]:
    """Write the names of a storey's spaces, the smallest space first.

    Parameters
    ----------
    recorder : Recorder
        Takes the letters.
    site : Site
        The house.
    storey_id : str
        Which storey.
    board : Board
        Places that are taken; those of the names are added.
    sheet : Sheet
        On a narrow one areas are left out, and names that are too long.

    Returns
    -------
    tuple of (str, str)
        The numbers that stand for names too long for their spaces, and the names.
    """
    names = short_names(site)
    spaces = [space for space in site.spaces if space.storey == storey_id]
    spaces.sort(key=lambda space: (_area(space).area, space.id))
    numbered: list[tuple[str, str]] = []
    for space in (one for one in spaces if one.belongs == "ours"):
        settings = _settings(names[space.id], _area(space).area)
        if sheet.is_narrow:
            settings = tuple(setting for setting in settings if not setting.area)
        found = _best(settings, space, board=board)
        if found is None and not sheet.is_narrow:
            number = str(len(numbered) + 1)
            numbered.append((number, names[space.id]))
            found = _best((Setting("space-number", (number,), "", 0.0),), space, board=board, at_most=1e9)
        if found is not None:
            _write(recorder, *found, mm_per_m=sheet.mm_per_m, board=board)
    for belongs, words in (("neighbour", "neighbour\u2019s"), ("shared", "shared")):
        others = [one for one in spaces if one.belongs == belongs]
        for space in others[-1:]:  # told once, in the largest
            found = _best((Setting("space-else", (words,), "", 0.0),), space, board=board)
            if found is not None:
                _write(recorder, *found, mm_per_m=sheet.mm_per_m, board=board)
    return tuple(numbered)


def _area(space: Space) -> shapely.Geometry:
    return shapely.make_valid(shapely.Polygon(space.outline_m))


def _settings(name: str, area_m2: float) -> tuple[Setting, ...]:
    """All ways of setting a name, the best first."""
    words = name.split() or [name]
    middle = min(range(1, len(words) + 1), key=lambda i: abs(len(" ".join(words[:i])) - len(name) / 2))
    halves = tuple(half for half in (" ".join(words[:middle]), " ".join(words[middle:])) if half)
    told = f"{area_m2:.1f} m\u00b2"
    found = [
        Setting(style, lines, area, 0.0)
        for lines, area in (((name,), told), (halves, told), ((name,), ""), (halves, ""))
        for style in (STYLES if area else STYLES[-1:])
    ]
    found += [Setting(STYLES[-1], lines, "", 90.0) for lines in ((name,), halves)]
    return tuple(dict.fromkeys(found))


Placed = tuple[Setting, Point2]


def _best(
    settings: tuple[Setting, ...], space: Space, *, board: Board, at_most: float = WORST
) -> Placed | None:
    """The first setting that lies well, or the one that lies least badly; None if all lie too badly."""
    area = _area(space)
    shapely.prepare(area)
    places = _places(area)
    best: Placed | None = None
    least = at_most
    for setting in settings:
        if setting.turn_deg and least <= FAIR:
            break
        size = setting.size_mm()
        for place in places:
            box = shapely.box(*board.rectangle(place, size))
            outside = 0.0 if area.contains(box) else box.difference(area).area / box.area
            if OUTSIDE * outside >= least:
                continue
            cost = OUTSIDE * outside + board.cost(place, size)
            if cost < least:
                best, least = (setting, place), cost
            if cost < 0.5 * GOOD:
                break
        if least <= GOOD:
            break
    return best


def _places(area: shapely.Geometry) -> tuple[Point2, ...]:
    """Where a name is tried: the roomiest place first, then all over the space."""
    circle = shapely.maximum_inscribed_circle(area, tolerance=0.05)
    middle = (float(circle.coords[0][0]), float(circle.coords[0][1]))
    x0, y0, x1, y1 = area.bounds
    shares = [(i + 0.5) / TRIED for i in range(TRIED)]
    spread = [(x0 + (x1 - x0) * sx, y0 + (y1 - y0) * sy) for sy in shares for sx in shares]
    inside = [place for place in spread if area.contains(shapely.Point(place))]
    inside.sort(
        key=lambda place: (round((place[0] - middle[0]) ** 2 + (place[1] - middle[1]) ** 2, 6), place)
    )
    return (middle, *inside)


def _write(recorder: Recorder, setting: Setting, at: Point2, *, mm_per_m: float, board: Board) -> None:
    board.take(at, setting.size_mm())
    step = INKS[setting.style].size_mm * LINE / mm_per_m
    rows = [(setting.style, line) for line in setting.lines]
    rows += [("space-area", setting.area)] if setting.area else []
    for i, (style, line) in enumerate(rows):
        away = ((len(rows) - 1) / 2 - i) * step
        place = (at[0] - away, at[1]) if setting.turn_deg else (at[0], at[1] + away)
        recorder.text(style, place, line, turn_deg=setting.turn_deg)
