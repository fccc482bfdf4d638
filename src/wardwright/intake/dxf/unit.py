"""What one unit of a drawing is: told by what is drawn, since headers are often wrong."""

from __future__ import annotations

import math
from statistics import median
from typing import NamedTuple

import numpy as np

from wardwright.errors import IntakeError
from wardwright.intake.dxf.file import Drawing, FloatArray
from wardwright.intake.dxf.texts import size_in

UNITS_M = {"mm": 0.001, "cm": 0.01, "m": 1.0, "inch": 0.0254, "foot": 0.3048}
"""What a unit may be. [m]"""
WORDS = {"mm": "millimetres", "cm": "centimetres", "m": "metres", "inch": "inches", "foot": "feet"}
LEAF_M = (0.5, 1.3)
"""Between these, a door's leaf is a likely one. [m] (assumption)"""
THICK_M = (0.05, 0.6)
"""Between these, a wall is likely that thick. [m] (assumption)"""
BESIDE = 2.0
"""A size stands beside a swing if it is no farther from it than this, in its radius. [-] (assumption)"""
CLOSE = 0.03
"""Units that differ by a smaller share are taken for one. [-] (assumption)"""


class Unit(NamedTuple):
    """A drawing's unit, and why."""

    name: str
    metres: float
    evidence: str


def unit_of(drawing: Drawing, *, told: str | None, where: str) -> Unit:
    """What one unit of a drawing is.

    Parameters
    ----------
    drawing : Drawing
        The drawing.
    told : str or None
        What the user says it is; None: it is found out.
    where : str
        The file's name, for messages.

    Returns
    -------
    Unit
        The unit, and the evidence for it in words.

    Raises
    ------
    IntakeError
        If it cannot be told.
    """
    header = drawing.stated_unit
    said = f"the header says {WORDS[header]}" if header else "the header says none"
    if told is not None:
        return Unit(told, UNITS_M[told], f"unit: {WORDS[told]}, as told; {said}")
    leaves = median(s.radius for s in drawing.swings) if drawing.swings else math.nan
    thick = usual_gap(drawing.faces)
    agreed = _by_sizes(drawing)
    likely = [
        name
        for name, m in UNITS_M.items()
        if _is_likely(leaves * m, LEAF_M) and _is_likely(thick * m, THICK_M)
    ]
    if math.isnan(leaves) and math.isnan(thick):
        likely = []
    if agreed is not None:
        name, count = agreed
        proof = f"{count} sizes written beside door swings agree"
    elif header in likely:
        name, proof = str(header), "door leaves and walls are as wide as such are"
    elif len(likely) == 1:
        name, proof = likely[0], "only so are door leaves and walls as wide as such are"
    else:
        raise IntakeError(
            f"its unit cannot be told: {said}, and {_measured(drawing, leaves, thick)}",
            where=where,
            cure="Say it with --unit mm, cm, m, inch or foot",
        )
    against = (
        f", although {said}" if header and header != name else "" if header else "; the header says none"
    )
    facts = (
        [f"{len(drawing.swings)} door swings are {leaves * UNITS_M[name]:.2f} m wide in the middle"]
        if drawing.swings
        else []
    )
    if header and header != name and drawing.swings:
        facts[0] += f" ({leaves * UNITS_M[header]:.3f} m by the header)"
    facts += [f"walls {thick * UNITS_M[name]:.2f} m thick"] if not math.isnan(thick) else []
    return Unit(name, UNITS_M[name], f"unit: {WORDS[name]}{against}: {'; '.join([*facts, proof])}")


def _is_likely(size: float, between: tuple[float, float]) -> bool:
    return math.isnan(size) or between[0] <= size <= between[1]


def _measured(drawing: Drawing, leaves: float, thick: float) -> str:
    if math.isnan(leaves) and math.isnan(thick):
        return "no door swing nor pair of faces is drawn"
    swings = (
        f"{len(drawing.swings)} door swings have a middle radius of {leaves:.3g}"
        if drawing.swings
        else "no door swing is drawn"
    )
    return f"{swings}, faces of walls stand {thick:.3g} apart"


def _by_sizes(drawing: Drawing) -> tuple[str, int] | None:
    """The unit in which the sizes written beside door swings are their widths, and how many say so."""
    sizes = [(text, size) for text in drawing.texts if (size := size_in(text.words)) is not None]
    votes: dict[str, int] = {}
    for swing in drawing.swings:
        middle = tuple((a + b) / 2 for a, b in zip(*swing.ends, strict=True))
        near = [
            (math.dist(text.place, middle), size) for text, size in sizes
            if math.dist(text.place, middle) < BESIDE * swing.radius
        ]  # fmt: skip
        if not near:
            continue
        _, size = min(near, key=lambda pair: pair[0])
        for name, metres in UNITS_M.items():
            if abs(swing.radius * metres / size.width_m - 1.0) < CLOSE:
                votes[name] = votes.get(name, 0) + 1
    if not votes:
        return None
    best = max(votes, key=lambda name: votes[name])
    return (best, votes[best]) if votes[best] >= 2 else None


def usual_gap(faces: FloatArray) -> float:
    """The usual distance from a face of a wall to the next one parallel to it, in the drawing's unit; nan of none."""
    way = faces[:, 1] - faces[:, 0]
    length = np.hypot(*way.T)
    longest = np.argsort(-length)[:300]
    faces, way, length = faces[longest], way[longest], length[longest]
    kept = length > 0
    faces, unit, length = faces[kept], way[kept] / length[kept, None], length[kept]
    gaps = []
    for start, u, reach in zip(faces[:, 0], unit, length, strict=True):
        beside = np.abs(unit[:, 0] * u[1] - unit[:, 1] * u[0]) < 0.005
        off = (faces - start) @ np.array((-u[1], u[0]))
        along = (faces - start) @ u
        common = np.minimum(along.max(axis=1), reach) - np.maximum(along.min(axis=1), 0.0)
        far = np.abs(off).mean(axis=1)
        chosen = beside & (common > 0.3 * reach) & (far > 1e-3 * reach)
        if chosen.any():
            gaps.append(float(far[chosen].min()))
    return median(gaps) if gaps else math.nan
