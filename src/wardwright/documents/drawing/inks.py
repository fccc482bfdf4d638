"""What each style of line, area and letter looks like: one table for every writer.

The meaning is in the pattern and the kind of line; colour only adds to it. The colours are the set for
colour-blind readers of M. Okabe and K. Ito, "Color Universal Design", 2008.
"""

from __future__ import annotations

from typing import NamedTuple

COLOURS: dict[str, str] = {
    "ink": "#1b1a17",
    "soft": "#5f5b52",
    "faint": "#c4beb0",
    "paper": "#ffffff",
    "blue": "#0072b2",
    "sky": "#56b4e9",
    "green": "#009e73",
    "orange": "#e69f00",
    "vermilion": "#d55e00",
    "purple": "#cc79a7",
}
"""Names to colours on paper; a screen may put its own ink and paper in their place."""

PREFIX = "ink-"
"""Goes before a style's name where it is a class: one word, since what is used again has no ancestors."""
PAD_MM = 1.1
"""Between the letters of a box and its frame. [mm]"""
LEAST_MM = 2.12
"""The smallest letters: 6 pt. [mm]"""
LETTER_WIDTH = 0.54
"""Mean width of a letter as a share of its size: for placing labels only. [-] (assumption)"""


class Ink(NamedTuple):
    """How one style is drawn; sizes in paper millimetres."""

    stroke: str | None = "ink"
    width_mm: float = 0.18
    dash_mm: tuple[float, ...] = ()
    fill: str | None = None
    size_mm: float = 0.0
    """Of letters; 0: not a style of letters. [mm]"""
    weight: int = 400
    is_italic: bool = False
    hatch: tuple[tuple[float, float], ...] = ()
    """Angle [deg] and spacing [mm] of each set of hatch lines."""


INKS: dict[str, Ink] = {
    # The house
    "wall": Ink(width_mm=0.25, fill="ink"),
    "wall-else": Ink(stroke=None, fill="faint"),
    "wall-low": Ink(width_mm=0.18, fill="paper"),
    "opening": Ink(width_mm=0.18, fill="paper"),
    "glass": Ink(width_mm=0.18),
    "leaf": Ink(width_mm=0.35),
    "swing": Ink(stroke="soft", width_mm=0.13),
    "gap": Ink(stroke="soft", width_mm=0.13, dash_mm=(1.2, 0.8)),
    "stair": Ink(stroke="soft", width_mm=0.13),
    "stair-way": Ink(width_mm=0.18),
    "fixture": Ink(stroke="soft", width_mm=0.13),
    "hot": Ink(width_mm=0.18, hatch=((90.0, 1.0),)),
    "ground": Ink(stroke="soft", width_mm=0.18, dash_mm=(3.0, 0.8, 0.4, 0.8)),
    "ground-thing": Ink(stroke="soft", width_mm=0.13, dash_mm=(0.8, 0.6)),
    "space-name": Ink(stroke=None, fill="ink", size_mm=2.7),
    "space-name-small": Ink(stroke=None, fill="ink", size_mm=2.4),
    "space-name-tiny": Ink(stroke=None, fill="ink", size_mm=2.12),
    "space-number": Ink(stroke=None, fill="ink", size_mm=2.4, weight=700),
    "space-area": Ink(stroke=None, fill="soft", size_mm=2.12),
    "space-else": Ink(stroke=None, fill="soft", size_mm=2.12, is_italic=True),
    "small": Ink(stroke=None, fill="soft", size_mm=2.12),
    "frame-text": Ink(stroke=None, fill="ink", size_mm=2.2),
    "frame-line": Ink(width_mm=0.25),
    "frame-solid": Ink(width_mm=0.18, fill="ink"),
    # Devices
    "device": Ink(width_mm=0.3, fill="paper", size_mm=2.3, weight=700),
    "device-dot": Ink(width_mm=0.25, fill="ink"),
    "device-look": Ink(width_mm=0.5),
    "leader": Ink(width_mm=0.13),
    # Answers
    "seen": Ink(stroke="blue", width_mm=0.2, hatch=((45.0, 1.8),)),
    "seen-edge": Ink(stroke="blue", width_mm=0.3),
    "possibly-seen": Ink(stroke="blue", width_mm=0.15, dash_mm=(1.0, 1.0), hatch=((45.0, 3.6),)),
    "possibly-seen-edge": Ink(stroke="blue", width_mm=0.2, dash_mm=(1.0, 0.8)),
    "blind": Ink(stroke="vermilion", width_mm=0.3, dash_mm=(0.1, 1.3), hatch=((0.0, 1.3),)),
    "blind-edge": Ink(stroke="vermilion", width_mm=0.25, dash_mm=(0.3, 0.9)),
    "leak": Ink(stroke="purple", width_mm=0.22, hatch=((30.0, 2.0), (120.0, 2.0))),
    "leak-edge": Ink(stroke="purple", width_mm=0.3, dash_mm=(2.0, 0.6)),
    "timely": Ink(stroke="green", width_mm=0.45, dash_mm=(4.0, 0.9, 0.5, 0.9)),
    "arrival-band": Ink(stroke="orange", width_mm=0.4, dash_mm=(2.4, 1.0)),
    "arrival-seen": Ink(stroke="orange", width_mm=0.25, hatch=((90.0, 1.4),)),
    "arrival-seen-edge": Ink(stroke="orange", width_mm=0.25),
    "trip": Ink(stroke="purple", width_mm=0.4, dash_mm=(0.8, 0.8, 2.4, 0.8)),
    "trip-seen": Ink(stroke="purple", width_mm=0.25, hatch=((60.0, 1.4),)),
    "trip-seen-edge": Ink(stroke="purple", width_mm=0.25),
    "beam": Ink(stroke="orange", width_mm=0.7, dash_mm=(3.0, 0.7)),
    "sunlit": Ink(stroke="orange", width_mm=0.22, hatch=((0.0, 1.5), (60.0, 1.5))),
    "sunlit-edge": Ink(stroke="orange", width_mm=0.3),
    "walk": Ink(width_mm=0.55),
    "beaten": Ink(stroke="vermilion", width_mm=1.0, dash_mm=(4.5, 1.0)),
    "path-letter": Ink(width_mm=0.35, fill="paper", size_mm=2.3, weight=700),
    "least-detected": Ink(stroke="purple", width_mm=0.7, dash_mm=(2.2, 0.8, 0.4, 0.8)),
    "walk-tick": Ink(width_mm=0.3),
    "walk-time": Ink(stroke=None, fill="ink", size_mm=2.12, weight=600),
    "unnoticed": Ink(stroke="vermilion", width_mm=1.5, dash_mm=(0.5, 1.1)),
    "unnoticed-floor": Ink(stroke="vermilion", width_mm=0.28, dash_mm=(1.6, 1.0), hatch=((135.0, 2.2),)),
    "unnoticed-floor-edge": Ink(stroke="vermilion", width_mm=0.35, dash_mm=(1.6, 0.7)),
    "notice": Ink(stroke="blue", width_mm=0.6, fill="paper"),
    "goal": Ink(width_mm=0.5),
    "radio-path": Ink(stroke="sky", width_mm=0.5, dash_mm=(0.5, 0.5, 2.2, 0.5)),
    "radio-cost": Ink(stroke="vermilion", width_mm=1.1),
    "level": Ink(width_mm=0.35, fill="paper"),
    "distance": Ink(width_mm=0.25),
    "level-room": Ink(stroke=None, fill="ink", size_mm=2.6, is_italic=True),
    "task": Ink(stroke="blue", width_mm=0.35, fill="paper", size_mm=2.2, weight=600),
    "task-line": Ink(stroke="blue", width_mm=0.5, dash_mm=(3.0, 0.7, 0.5, 0.7, 0.5, 0.7)),
    "climb": Ink(stroke="vermilion", width_mm=0.7, dash_mm=(1.8, 0.5)),
    "climb-step": Ink(stroke="vermilion", width_mm=0.4, fill="paper", size_mm=2.2, weight=600),
    "perch": Ink(stroke="purple", width_mm=0.2, hatch=((135.0, 1.1),)),
    "perch-edge": Ink(stroke="purple", width_mm=0.4),
    "pet-line": Ink(stroke="purple", width_mm=0.4, dash_mm=(0.4, 0.6)),
    "fault": Ink(stroke="vermilion", width_mm=0.6),
    "fault-line": Ink(stroke="vermilion", width_mm=0.35, dash_mm=(2.2, 1.1)),
    "suggestion": Ink(
        stroke="green", width_mm=0.45, dash_mm=(1.0, 0.7), fill="paper", size_mm=2.2, weight=600
    ),
    "answer-label": Ink(stroke=None, fill="ink", size_mm=2.3, weight=600),
    # The strip of time, and a picture of its own
    "paper": Ink(stroke=None, fill="paper"),
    "picture-name": Ink(stroke=None, fill="ink", size_mm=4.2, weight=600),
    "picture-value": Ink(stroke=None, fill="ink", size_mm=5.0, weight=600),
    "strip-name": Ink(stroke=None, fill="ink", size_mm=2.9),
    "strip-value": Ink(stroke=None, fill="ink", size_mm=2.9, weight=600),
    "strip-axis": Ink(stroke="soft", width_mm=0.18),
    "spread": Ink(width_mm=0.3),
    "spread-half": Ink(width_mm=0.3, fill="paper"),
    "spread-middle": Ink(width_mm=0.9),
    "strip-grid": Ink(stroke="soft", width_mm=0.1, dash_mm=(0.4, 0.9)),
    "strip-number": Ink(stroke=None, fill="soft", size_mm=2.6),
    "sun-lens": Ink(stroke="ink", width_mm=0.2, fill="ink"),
    "sun-covered-edge": Ink(stroke="soft", width_mm=0.25, dash_mm=(0.3, 0.8)),
    "alarm-range": Ink(stroke="blue", width_mm=1.3),
    "alarm-point": Ink(stroke="ink", width_mm=0.35, fill="ink"),
    "range": Ink(stroke="soft", width_mm=1.2),
    "range-zero": Ink(width_mm=0.35),
    "intruder-range": Ink(stroke="vermilion", width_mm=1.3, dash_mm=(0.5, 0.7)),
    "intruder-point": Ink(stroke="ink", width_mm=0.45, fill="paper"),
}
"""Style names to inks. A style that is not here is an error of the program."""


def text_width_mm(style: str, text: str) -> float:
    """About how wide a text is on paper. [mm]"""
    ink = INKS[style]
    bold = 1.06 if ink.weight >= 600 else 1.0
    return len(text) * ink.size_mm * LETTER_WIDTH * bold


def box_size_mm(style: str, text: str) -> tuple[float, float]:
    """Width and height of a box with letters in it. [mm]"""
    size = INKS[style].size_mm
    return text_width_mm(style, text) + 2 * PAD_MM, size * 1.1 + 2 * PAD_MM * 0.7


def stylesheet(colours: dict[str, str], *, only: frozenset[str] | None = None) -> str:
    """Write the table as style rules, one class a style.

    Parameters
    ----------
    colours : dict of str
        What to print for each colour name, such as ``var(--ink)`` on a screen.
    only : frozenset of str, optional
        The styles that are wanted; all if left out.

    Returns
    -------
    str
        One rule a line, in the table's order.
    """
    chosen = [(name, ink) for name, ink in INKS.items() if only is None or name in only]
    rules = [f".{PREFIX}{name}{{{_rule(ink, colours)}}}" for name, ink in chosen]
    rules += [
        f".{PREFIX}{name}-letters{{fill:{colours['ink']};font-size:{ink.size_mm:g}px;font-weight:{ink.weight}}}"
        for name, ink in chosen
        if ink.stroke and ink.size_mm
    ]
    return "\n".join(rules)


def _rule(ink: Ink, colours: dict[str, str]) -> str:
    parts = [f"fill:{colours[ink.fill] if ink.fill else 'none'}"]
    if ink.stroke:
        parts.append(f"stroke:{colours[ink.stroke]};stroke-width:{ink.width_mm:g}")
        parts += [f"stroke-dasharray:{' '.join(f'{d:g}' for d in ink.dash_mm)}"] if ink.dash_mm else []
    elif ink.size_mm:
        # Letters stand on a rim of paper, so that hatching does not run through them.
        parts.append(f"stroke:{colours['paper']};stroke-width:{0.4 * ink.size_mm:.2f};paint-order:stroke")
        parts.append("stroke-linejoin:round")
    if ink.size_mm and not ink.stroke:
        parts.append(f"font-size:{ink.size_mm:g}px")
        parts += [f"font-weight:{ink.weight}"] if ink.weight != 400 else []
        parts += ["font-style:italic"] if ink.is_italic else []
    return ";".join(parts)
