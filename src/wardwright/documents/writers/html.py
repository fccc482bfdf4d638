"""The page as one self-contained HTML file: nothing is asked of the network, no script runs."""

from __future__ import annotations

from jinja2 import Environment, StrictUndefined
from markupsafe import Markup

from wardwright.documents.content import wording
from wardwright.documents.content.page import Page
from wardwright.documents.drawing.inks import COLOURS, stylesheet
from wardwright.documents.drawing.recording import Drawing
from wardwright.documents.drawing.sheet import NARROW_MM
from wardwright.documents.drawing.signs import sign
from wardwright.documents.writers.csv_rows import heading_of
from wardwright.documents.writers.page_style import PAGE_STYLE
from wardwright.documents.writers.page_template import PAGE_TEMPLATE
from wardwright.documents.writers.svg import inline_svg

_ENVIRONMENT = Environment(autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True)
_TEMPLATE = _ENVIRONMENT.from_string(PAGE_TEMPLATE)


def write_html(page: Page) -> bytes:
    """Set a page as HTML.

    Parameters
    ----------
    page : Page
        Plain content and recorded drawings.

    Returns
    -------
    bytes
        UTF-8, one file; the same page gives the same bytes.
    """
    drawn: set[str] = set()

    def svg(drawing: Drawing) -> Markup:
        return _trusted(inline_svg(drawing, drawn=drawn))

    inks = stylesheet({name: f"var(--{name})" for name in COLOURS})
    text = _TEMPLATE.render(
        page=page,
        words=wording,
        style=_trusted(PAGE_STYLE + inks),
        svg=svg,
        narrow_mm=NARROW_MM,
        heading=heading_of,
        signs={role: _sign(role) for role in wording.SIGNS},
    )
    return text.encode()


def _sign(role: str) -> Markup:
    drawing = sign(role, key=f"sign-{role}", words=wording.SIGNS[role])
    # A sign stands beside its meaning in words, so it is hidden from who has it read out.
    body = inline_svg(drawing, drawn=set()).replace('role="img"', 'aria-hidden="true"', 1)
    start, end = body.index("<title"), body.index("</desc>") + len("</desc>")
    labels = body.index(" aria-labelledby"), body.index(">", body.index(" aria-labelledby"))
    return _trusted(body[: labels[0]] + body[labels[1] : start] + body[end:])


def _trusted(text: str) -> Markup:
    return Markup(text)  # noqa: S704 - our own style sheet and the SVG writer, which escapes every text
