"""Two states of a house side by side, as one self-contained HTML file: nothing is asked of the network."""

from __future__ import annotations

from jinja2 import Environment, StrictUndefined
from markupsafe import Markup

from wardwright.documents.content import wording
from wardwright.documents.content.comparison import state_words
from wardwright.documents.content.side_by_side import SideBySide
from wardwright.documents.drawing.inks import COLOURS, stylesheet
from wardwright.documents.drawing.recording import Drawing
from wardwright.documents.writers.svg import inline_svg

_STYLE = """
:root{color-scheme:light;--ink:#1b1a17;--soft:#5f5b52;--faint:#c4beb0;--paper:#fff;--blue:#0072b2;--sky:#56b4e9;
--green:#009e73;--orange:#e69f00;--vermilion:#d55e00;--purple:#cc79a7}
body{margin:0 auto;max-width:76rem;padding:1rem;font:16px/1.4 Arial,"Liberation Sans",sans-serif;
color:var(--ink);background:var(--paper)}
h1{font-size:1.5rem;margin:.4rem 0}h2{font-size:1.15rem;border-bottom:2px solid var(--ink);margin:2rem 0 .6rem}
.stamp{border:1px solid var(--ink);padding:.4rem .7rem;font-size:.85rem}
.pair{display:grid;grid-template-columns:1fr 1fr;gap:1rem}.pair h3{margin:.3rem 0;font-size:1rem}
@media (max-width:60rem){.pair{grid-template-columns:1fr}}
figure{margin:0;border:1px solid var(--faint);overflow-x:auto}figure svg{max-width:100%;height:auto;display:block}
.drawing{font-family:Arial,"Liberation Sans",sans-serif}
table{border-collapse:collapse;width:100%;font-size:.92rem}.roll{overflow-x:auto}
th,td{text-align:left;vertical-align:top;padding:.3rem .7rem .3rem 0;border-bottom:1px solid var(--faint)}
.num{text-align:right}.group th{padding-top:1rem;border-bottom:1px solid var(--ink)}
.soft{color:var(--soft);font-size:.9rem}li{margin:.25rem 0}
@media print{@page{size:A4 landscape;margin:12mm}body{font-size:9pt;padding:0}figure,tr{break-inside:avoid}}
"""
_TEMPLATE = Environment(
    autoescape=True, undefined=StrictUndefined, trim_blocks=True, lstrip_blocks=True
).from_string(
    """<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<meta name="robots" content="noindex">
<title>{{ page.names[0] }} and {{ page.names[1] }}, side by side</title>
<style>{{ style }}</style>
</head>
<body>
<header><p class="stamp"><strong>{{ words.COPY_CLASS }}</strong>: {{ words.COPY_WARNING }}</p>
<h1>{{ page.names[0] }} &rarr; {{ page.names[1] }}</h1></header>
<main>
<section><h2>What each is worth</h2>
<table><thead><tr><th scope="col">Answers</th><th scope="col" class="num">{{ page.names[0] }}</th>
<th scope="col" class="num">{{ page.names[1] }}</th></tr></thead><tbody>
{% for word, old, new in page.tally %}<tr><th scope="row">{{ word }}</th><td class="num">{{ old }}</td>
<td class="num">{{ new }}</td></tr>
{% endfor %}<tr><th scope="row">findings that must be mended</th><td class="num">{{ page.must_mend[0] }}</td>
<td class="num">{{ page.must_mend[1] }}</td></tr></tbody></table></section>
{% if page.races %}<section><h2>The race that differs most</h2><div class="pair">
{% for race in page.races %}<div><h3>{{ page.names[loop.index0] }}</h3><figure>{{ svg(race) }}</figure></div>
{% endfor %}</div></section>{% endif %}
<section><h2>What changed in the house</h2>
{% if page.told.changes %}<ul>
{% for one in page.told.changes %}<li><strong>{{ one.thing }}</strong>{% if one.of %} ({{ one.of }}){% endif %}:
{{ one.what|join("; ") or one.course }}</li>
{% endfor %}</ul>{% else %}<p>The house is as it was.</p>{% endif %}</section>
{% if page.program %}<section><h2>What changed in the program and its rows of data</h2>
{% if page.program.what %}<ul>{% for one in page.program.what %}<li>{{ one }}</li>{% endfor %}</ul>
{% else %}<p>Nothing.</p>{% endif %}
{% if page.program.answers %}<p>Others for that alone, of the house as signed; no test needs to be repeated for these:
</p><ul>{% for one in page.program.answers %}<li>{{ one.title }}: {{ one.was }} &rarr; {{ one.today }}</li>
{% endfor %}</ul>{% endif %}</section>{% endif %}
<section><h2>Answers</h2><div class="roll" tabindex="0" role="group" aria-label="Answers"><table>
<thead><tr><th scope="col">Answer</th><th scope="col">{{ page.names[0] }}</th><th scope="col">{{ page.names[1] }}</th>
<th scope="col">By</th></tr></thead>
{% for heading, lines in groups %}<tbody><tr class="group"><th colspan="4" scope="rowgroup">{{ heading }}:
{{ lines|length }}</th></tr>
{% for one in lines %}<tr><th scope="row">{{ one.question_name }}: {{ one.subject }}</th>
<td>{{ state(one.before) }}</td><td>{{ state(one.after) }}</td><td>{{ one.by }}</td></tr>
{% endfor %}</tbody>{% endfor %}</table></div>
<p class="soft">{{ page.told.same }} answers are as they were.</p></section>
<section><h2>Rules</h2>
{% for heading, course in (("Fail now", "came"), ("Fail no more", "went"), ("Not checked now", "not checked now")) %}
<h3>{{ heading }}</h3>
{% set lines = page.told.findings|selectattr("course", "equalto", course)|list %}
{% if lines %}<ul>{% for one in lines %}<li><code>{{ one.code }}</code> {{ one.subject }}, {{ one.severity }}:
{{ one.message }}</li>{% endfor %}</ul>{% else %}<p>None.</p>{% endif %}{% endfor %}</section>
<section><h2>Tests to repeat</h2><p>{{ page.told.tests.heading }}.</p>
{% if page.told.tests.stops %}<p class="soft">In {{ page.told.tests.order }}, from {{ page.told.tests.begins_at }} and
back.</p><div class="pair"><ol>
{% for stop in page.told.tests.stops %}<li>{{ stop.where or "no place known" }}, walk {{ stop.walk }}<ul>
{% for one in stop.tests %}<li>{{ one.what }} <span class="soft">({{ one.why }})</span></li>{% endfor %}</ul></li>
{% endfor %}</ol><div>{% for drawing in page.rounds %}<h3>{{ drawing.title }}</h3><figure>{{ svg(drawing) }}</figure>
{% endfor %}</div></div>{% endif %}</section>
</main>
</body>
</html>
"""
)


def write_side_by_side(page: SideBySide) -> str:
    """Set two states side by side as HTML.

    Parameters
    ----------
    page : SideBySide
        Plain content and recorded drawings.

    Returns
    -------
    str
        One file without a script; the same content gives the same text.
    """
    drawn: set[str] = set()

    def svg(drawing: Drawing) -> Markup:
        return _trusted(inline_svg(drawing, drawn=drawn))

    lines = page.told.answers
    return _TEMPLATE.render(
        page=page,
        words=wording,
        style=_trusted(_STYLE + stylesheet({name: f"var(--{name})" for name in COLOURS})),
        svg=svg,
        state=state_words,
        groups=[
            ("Fail now", [one for one in lines if one.fails == "now"]),
            ("Fail no more", [one for one in lines if one.fails == "no more"]),
            ("Others, beyond the range that they had", [o for o in lines if not o.fails and o.is_beyond]),
            ("Within the range that they had", [o for o in lines if not o.fails and not o.is_beyond]),
        ],
    )


def _trusted(text: str) -> Markup:
    return Markup(text)  # noqa: S704 - our own style sheet and the SVG writer, which escapes every text
