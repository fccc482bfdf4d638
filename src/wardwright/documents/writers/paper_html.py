"""A paper as one self-contained HTML file, for a telephone in the hand: nothing is asked of the network."""

from __future__ import annotations

from jinja2 import Environment, StrictUndefined

from wardwright.documents.content.copies import COPIES
from wardwright.documents.content.paper import Paper, told, told_date
from wardwright.documents.writers.csv_rows import heading_of

_STYLE = """
:root{color-scheme:light dark;--ink:#1b1a17;--paper:#fff;--rule:#8d8a82;--shade:#f1efe9}
@media (prefers-color-scheme:dark){:root{--ink:#eeece6;--paper:#16150f;--rule:#77736a;--shade:#25231c}}
body{margin:0 auto;max-width:70rem;padding:1rem;font:17px/1.4 Arial,sans-serif;
color:var(--ink);background:var(--paper)}
h1{font-size:1.5rem;margin:.4rem 0 0}h2{font-size:1.15rem;margin:1.8rem 0 .4rem}
.stamp{border:1px solid var(--ink);padding:.4rem .7rem;font-size:.85rem}
.roll{overflow-x:auto}table{border-collapse:collapse;width:100%;font-size:.95rem}
th,td{text-align:left;vertical-align:top;padding:.5rem .7rem .5rem 0;border-bottom:1px solid var(--rule)}
th{font-size:.8rem}tr:nth-child(even) td{background:var(--shade)}
input{width:1.6rem;height:1.6rem;margin:0}
@media screen and (max-width:44rem){thead{display:none}table,tbody,tr,td{display:block}
tr{border:1px solid var(--rule);margin:0 0 .8rem;padding:.5rem .7rem;position:relative}
td{border:0;padding:.15rem 3rem .15rem 0}tr:nth-child(even) td{background:none}
td[data-heading]:before{content:attr(data-heading) ": ";font-size:.8rem}
td:first-child:not([data-heading]){position:absolute;right:.7rem;top:.6rem;padding:0}}
@media print{@page{size:A4 landscape;margin:12mm}body{font-size:9pt;padding:0}td,th{padding:.8mm 2mm .8mm 0}
input{width:3mm;height:3mm}tr{break-inside:avoid}}
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
<title>{{ paper.title }}: {{ paper.house }}</title>
<style>{{ style|safe }}</style>
</head>
<body>
<header><p class="stamp"><strong>{{ copy.stamp }}</strong>: {{ copy.warning }}</p>
<h1>{{ paper.title }}</h1><p>{{ paper.house }}. Drawn up {{ day(paper.drawn_up) }}.</p>
{% if paper.foot %}<p>{{ paper.foot }}</p>{% endif %}</header>
<main>
{% for section in paper.sections %}
<section><h2>{{ section.heading }}</h2>
{% for words in section.text %}<p>{{ words }}</p>
{% endfor %}
{% if section.points %}<ul>{% for words in section.points %}<li>{{ words }}</li>
{% endfor %}</ul>{% endif %}
{% if section.table %}<div class="roll" tabindex="0" role="group" aria-label="{{ section.heading }}">
<table><thead><tr>{% if section.table.is_ticked %}<th scope="col">Done</th>{% endif %}
{% for column in section.table.columns %}<th scope="col">{{ heading(column) }}</th>
{% endfor %}</tr></thead><tbody>
{% for row in section.table.rows %}<tr>{% if section.table.is_ticked %}
<td><input type="checkbox" aria-label="done: {{ told(row[0]) }} {{ told(row[1]) }}"></td>{% endif %}
{% for cell in row %}<td data-heading="{{ heading(section.table.columns[loop.index0]) }}">{{ told(cell) }}</td>
{% endfor %}</tr>
{% endfor %}</tbody></table></div>{% endif %}
{% for words in section.blanks %}<p>{{ words }}: ____________________</p>
{% endfor %}</section>
{% endfor %}
</main>
</body>
</html>
"""
)


def write_paper_html(paper: Paper) -> bytes:
    """Set a paper without drawings as HTML.

    Parameters
    ----------
    paper : Paper
        Plain content; its drawings are left out.

    Returns
    -------
    bytes
        UTF-8, one file without a script; a tick lasts as long as the page is open.
    """
    text = _TEMPLATE.render(
        paper=paper,
        copy=COPIES[paper.copy],
        style=_STYLE,
        heading=heading_of,
        told=told,
        day=told_date,
    )
    return text.encode()
