"""A drawing as SVG: to scale in millimetres, text as text, the same bytes every time."""

from __future__ import annotations

from html import escape

from wardwright.documents.drawing.inks import COLOURS, stylesheet
from wardwright.documents.drawing.recording import (
    LAYERS,
    Drawing,
)
from wardwright.documents.writers.svg_strokes import Paper, number, played

SANS = "'Helvetica Neue',Arial,'Liberation Sans','DejaVu Sans',sans-serif"
"""The letters of drawings: what the reader's machine has."""


def write_svg(drawing: Drawing) -> bytes:
    """Write a drawing as a file of its own.

    Parameters
    ----------
    drawing : Drawing
        What to write.

    Returns
    -------
    bytes
        UTF-8. Its size on paper is the drawing's scale exactly.
    """
    body = "".join(played(drawing.base.with_(drawing.own), Paper(drawing), LAYERS))
    return (_head(drawing, has_namespace=True) + own_style(drawing) + body + "</svg>\n").encode()


def own_style(*drawings: Drawing) -> str:
    """The style sheet of a file that holds drawings and nothing else: their letters, and the inks that they use."""
    used = frozenset(verb.style for one in drawings for _, verb in one.base.with_(one.own).strokes)
    return f"<style>.drawing{{font-family:{SANS}}}\n{stylesheet(COLOURS, only=used)}</style>"


def inline_svg(drawing: Drawing, *, drawn: set[str]) -> str:
    """Write a drawing into a page whose style sheet holds the inks.

    Parameters
    ----------
    drawing : Drawing
        What to write.
    drawn : set of str
        Keys of bases that the page holds already; the drawing's own is added. A base is written once and
        then used again.

    Returns
    -------
    str
        An `svg` element.
    """
    paper = Paper(drawing)
    parts = [_head(drawing, has_namespace=False)]
    parts += played(drawing.own, paper, ("under",))
    if drawing.base_key is None:
        parts += played(drawing.base, paper, LAYERS)
    elif drawing.base_key in drawn:
        parts.append(f'<use href="#{drawing.base_key}"/>')
    else:
        drawn.add(drawing.base_key)
        parts.append(f'<g id="{drawing.base_key}">')
        parts += played(drawing.base, paper, LAYERS)
        parts.append("</g>")
    parts += played(drawing.own, paper, tuple(layer for layer in LAYERS if layer != "under"))
    return "".join(parts) + "</svg>"


def fragment_svg(drawing: Drawing) -> str:
    """What a drawing adds to its base, for a page that has the base already.

    Parameters
    ----------
    drawing : Drawing
        Whose own strokes are wanted.

    Returns
    -------
    str
        One `g` element for each layer that is drawn on; no `svg` round them.
    """
    return "".join(played(drawing.own, Paper(drawing), LAYERS))


def _head(drawing: Drawing, *, has_namespace: bool) -> str:
    wide, high = number(drawing.width_mm), number(drawing.height_mm)
    space = ' xmlns="http://www.w3.org/2000/svg"' if has_namespace else ""
    return (
        f'<svg{space} class="drawing" width="{wide}mm" height="{high}mm" viewBox="0 0 {wide} {high}" role="img" '
        f'aria-labelledby="{drawing.key}-title {drawing.key}-words">'
        f'<title id="{drawing.key}-title">{escape(drawing.title)}</title>'
        f'<desc id="{drawing.key}-words">{escape(drawing.description)}</desc>'
    )
