"""A drawing as the PDF's typesetter sets it best: letters on patches of paper in place of rims.

The typesetter draws the rim of each letter over the letter before it, which eats names away.
"""

from __future__ import annotations

import math

from wardwright.documents.drawing.inks import INKS, text_width_mm
from wardwright.documents.drawing.recording import Drawing, Layer, Polygon, Recording, Text, Verb
from wardwright.documents.writers.svg import write_svg
from wardwright.model.record import Point2, Ring

RIM, NO_RIM = b"paint-order:stroke", b"stroke:none"
PATCH = "paper"
"""The style of a patch."""
SHIFT = {"start": 0.5, "middle": 0.0, "end": -0.5}
"""How far a text's middle is from its place, in widths. [-]"""


def svg_for_pdf(drawing: Drawing) -> bytes:
    """Write a drawing so that the typesetter's letters stay whole.

    Parameters
    ----------
    drawing : Drawing
        What to write.

    Returns
    -------
    bytes
        An SVG file at the drawing's scale.
    """
    whole = drawing.base.with_(drawing.own)
    strokes: list[tuple[Layer, Verb]] = []
    for layer, verb in whole.strokes:
        if isinstance(verb, Text):
            strokes.append((layer, Polygon(PATCH, (patch(verb, mm_per_unit=drawing.mm_per_unit),))))
        strokes.append((layer, verb))
    return write_svg(drawing._replace(base=Recording(), own=Recording(tuple(strokes)))).replace(RIM, NO_RIM)


def patch(text: Text, *, mm_per_unit: float) -> Ring:
    """The four corners of what a text covers, in the drawing's unit.

    Examples
    --------
    >>> patch(Text("small", (0.0, 0.0), "ab", "start"), mm_per_unit=1.0)[1]
    (2.2896, -1.06)
    """
    wide, high = text_width_mm(text.style, text.text), INKS[text.style].size_mm
    middle = SHIFT[text.anchor] * wide
    turn = math.radians(text.turn_deg)
    cos, sin = math.cos(turn), math.sin(turn)

    def corner(x: float, y: float) -> Point2:
        x += middle
        return (
            round(text.at[0] + (x * cos - y * sin) / mm_per_unit, 6),
            round(text.at[1] + (x * sin + y * cos) / mm_per_unit, 6),
        )

    return tuple(
        corner(x * wide / 2, y * high / 2) for x, y in ((-1.0, -1.0), (1.0, -1.0), (1.0, 1.0), (-1.0, 1.0))
    )
