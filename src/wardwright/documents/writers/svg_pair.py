"""Two drawings abreast as one SVG file."""

from __future__ import annotations

from wardwright.documents.drawing.recording import Drawing
from wardwright.documents.writers.svg import inline_svg, own_style
from wardwright.documents.writers.svg_strokes import number

GAP_MM = 4.0
"""Between the two. [mm]"""


def write_svg_pair(left: Drawing, right: Drawing) -> bytes:
    """Write two drawings abreast as a file of its own.

    Parameters
    ----------
    left, right : Drawing
        Each with a key of its own.

    Returns
    -------
    bytes
        UTF-8. Both at their own scale.
    """
    wide, high = left.width_mm + GAP_MM + right.width_mm, max(left.height_mm, right.height_mm)
    parts = [_placed(left, x_mm=0.0), _placed(right, x_mm=left.width_mm + GAP_MM)]
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" width="{number(wide)}mm" height="{number(high)}mm" '
        f'viewBox="0 0 {number(wide)} {number(high)}">'
    )
    return f"{head}{own_style(left, right)}{''.join(parts)}</svg>\n".encode()


def _placed(drawing: Drawing, *, x_mm: float) -> str:
    wide, high = number(drawing.width_mm), number(drawing.height_mm)
    whole = inline_svg(drawing, drawn=set())
    # Inside another drawing lengths are counted in its units, which are millimetres.
    return whole.replace(
        f'width="{wide}mm" height="{high}mm"', f'x="{number(x_mm)}" width="{wide}" height="{high}"', 1
    )
