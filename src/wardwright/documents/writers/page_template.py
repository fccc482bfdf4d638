"""The page's frame: headings, landmarks and tables about the content."""

from __future__ import annotations

from wardwright.documents.writers.answers_template import ANSWER_MACRO, ANSWERS_TEMPLATE
from wardwright.documents.writers.campaign_template import CAMPAIGN_TEMPLATE
from wardwright.documents.writers.plans_template import PLANS_TEMPLATE

_MACROS = """
{% macro mark(verdict) -%}
<svg class="mark {{ verdict }}" aria-hidden="true"><use href="#mark-{{ verdict }}"/></svg>
{%- endmacro %}
{% macro sheet(drawing, has_title, lines) %}
<figure class="sheet{% if drawing.width_mm < narrow_mm %} narrow{% endif %}"
 style="--w:{{ '%.2f'|format(drawing.width_mm) }}mm">
<div class="roll" tabindex="0" role="group" aria-label="{{ drawing.title }}">{{ svg(drawing) }}</div>
<figcaption>{% if has_title %}<b>{{ drawing.title }}</b>, 1:{{ drawing.scale }} on paper{% endif %}
{% if drawing.styles_used %}<ul class="key">
{% for role in drawing.styles_used %}<li>{{ signs[role] }}<span>{{ words.SIGNS[role] }}</span></li>
{% endfor %}</ul>{% endif %}
{% if lines %}<ul class="key">
{% for line in lines %}<li><span class="tag">{{ line.tag }}</span><span>{{ line.name }}
{%- if line.words %} ({{ line.words }}){% endif %}</span></li>
{% endfor %}</ul>{% endif %}
</figcaption></figure>
{% endmacro %}
{% macro listed(lines) %}<ul class="plain">
{% for line in lines %}<li>{{ line }}</li>
{% endfor %}</ul>{% endmacro %}
"""

_HEAD = """<!doctype html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="referrer" content="no-referrer">
<meta name="robots" content="noindex">
<title>{{ page.house }}: what the alarm does</title>
<style>{{ style }}</style>
</head>
<body>
<svg width="0" height="0" style="position:absolute" aria-hidden="true">
<symbol id="mark-bad" viewBox="0 0 12 12"><rect width="12" height="12" fill="currentColor"/>
<path d="M3 3l6 6M9 3l-6 6" stroke="var(--paper)" stroke-width="1.8"/></symbol>
<symbol id="mark-thin" viewBox="0 0 12 12">
<rect x=".6" y=".6" width="10.8" height="10.8" fill="none" stroke="currentColor"
 stroke-width="1.2"/><path d="M0 12L12 0v12z" fill="currentColor"/></symbol>
<symbol id="mark-unknown" viewBox="0 0 12 12"><rect x=".7" y=".7" width="10.6" height="10.6" fill="none"
 stroke="currentColor" stroke-width="1.4" stroke-dasharray="2 1.5"/></symbol>
<symbol id="mark-not-counted" viewBox="0 0 12 12">
<path d="M1 6h10" stroke="currentColor" stroke-width="1.6"/></symbol>
<symbol id="mark-good" viewBox="0 0 12 12">
<rect x=".6" y=".6" width="10.8" height="10.8" fill="none" stroke="currentColor"
 stroke-width="1.2"/><path d="M2.8 6.2l2.3 2.5 4.2-5.2" fill="none" stroke="currentColor" stroke-width="1.6"/>
</symbol>
</svg>
<a class="skip" href="#answers">Go to the answers</a>
<div class="wrap">
<header class="block">
<div class="block-top"><div><p class="maker">Wardwright</p><h1>{{ page.house }}</h1></div>
<p class="stamp"><strong>{{ words.COPY_CLASS }}</strong>{{ words.COPY_WARNING }}</p></div>
<dl class="cells"><div><dt>Place</dt><dd>{{ page.place }}</dd></div>
<div><dt>Plans on paper</dt><dd>1:{{ page.scale }}
{%- if page.file_scale != page.scale %}; in files of their own 1:{{ page.file_scale }}{% endif %}</dd></div>
<div><dt>Answers</dt><dd>{{ page.answers|length }}</dd></div></dl>
</header>
<nav aria-label="On this page"><ul>
<li><a href="#summary">Summary</a></li><li><a href="#plans">Plans</a></li>
<li><a href="#answers">Answers, worst first</a></li>
<li><a href="#findings">Findings</a></li>
{% if page.campaign %}<li><a href="#campaign">Intruders</a></li>{% endif %}
<li><a href="#known">How the facts are known</a></li>
<li><a href="#figures">Figures used</a></li><li><a href="#cautions">Cautions</a></li></ul></nav>
<main>
"""

_SUMMARY = """
<section id="summary" aria-labelledby="summary-h"><h2 id="summary-h">Summary</h2>
<ul class="tally">
{% for row in page.counts %}<li class="{{ row.verdict }}"><b>{{ row.count }}</b>
<span>{{ mark(row.verdict) }} {{ row.word }}</span><br><span class="small">{{ row.words }}</span></li>
{% endfor %}
{% if page.not_counted %}<li class="not-counted"><b>{{ page.not_counted.count }}</b>
<span>{{ mark("not-counted") }} not counted</span><br><span class="small">{{ words.NOT_COUNTED_WORDS }}</span></li>
{% endif %}</ul>
{% if page.must_mend %}
<div class="notice"><h3>Must mend before anything else</h3>{{ listed(page.must_mend) }}</div>{% endif %}
{% if page.locks_and_lights %}<h3>{{ words.LOCKS_FIRST }}</h3><p>{{ words.LOCKS_FIRST_WHY }}</p>
{{ listed(page.locks_and_lights) }}{% endif %}
{% if page.worth_adding %}<h3>Worth adding first</h3>
<p>These facts are missing, and would move the answers most.</p>{{ listed(page.worth_adding) }}{% endif %}
<div class="two"><div><h3>What this is</h3>{{ listed(words.WHAT_IT_IS) }}</div>
<div><h3>What it is not</h3>{{ listed(words.WHAT_IT_IS_NOT) }}</div></div>
{% if page.answers %}
<table><caption>All answers, worst first. {{ words.HOW_TO_READ }}</caption>
<thead><tr><th scope="col">Verdict</th><th scope="col">Subject</th><th scope="col" class="roomy">Question</th>
<th scope="col" class="num">Likely</th><th scope="col" class="num">Range</th></tr></thead><tbody>
{% for answer in page.answers %}<tr><td>{{ mark(answer.verdict) }}&nbsp;{{ answer.verdict_word }}</td>
<th scope="row"><a href="#{{ answer.key }}">{{ answer.subject }}</a>
<span class="cramped">{{ answer.question_name }}</span></th>
<td class="roomy">{{ answer.question_name }}</td>
{% if not answer.reason %}<td class="num">{{ answer.value }}</td><td class="num">{{ answer.range }}</td>
{% else %}<td colspan="2">{{ answer.reason or answer.value }}</td>{% endif %}</tr>
{% endfor %}
{% if page.not_counted %}<tr><td>{{ mark("not-counted") }}&nbsp;not counted</td>
<td colspan="4"><a href="#not-counted">{{ page.not_counted.heading }}</a></td></tr>{% endif %}
</tbody></table>{% endif %}
</section>
"""

_FINDINGS = """
<section id="findings" aria-labelledby="findings-h"><h2 id="findings-h">Findings</h2>
{% if not page.were_rules_run %}<p>{{ words.NO_FINDINGS_ASKED }}</p>
{% elif not page.finding_groups %}<p>{{ words.NOTHING_FOUND }}</p>{% endif %}
<div class="flow beside">
<div>
{% for group in page.finding_groups %}<h3>{{ group.heading }} ({{ group.count }})</h3>
<p class="small">{{ group.meaning }}</p>
{% for finding in group.findings %}{% if group.severity == "not run" %}<div class="finding">
<p class="small"><code>{{ finding.code }}</code> {{ finding.message }} {{ finding.cure }}</p>
{% if finding.mends %}{{ listed(finding.mends) }}{% endif %}</div>
{% else %}<div class="finding"><p>{{ finding.message }}</p>
{% if finding.held_against %}<p>{{ finding.held_against }}.</p>{% endif %}
<p>{{ finding.cure }}</p>
{% if finding.mends %}{{ listed(finding.mends) }}{% endif %}
<p class="small"><code>{{ finding.code }}</code> {{ finding.rule }}; {{ finding.subject }}</p></div>
{% endif %}{% endfor %}
{% if group.absent %}<div class="finding"><p class="small">{{ group.heading }}, {{ words.NONE_OF_THEM }}:
{{ group.absent }}</p></div>{% endif %}
{% endfor %}</div>
{% if page.finding_plans %}<div class="sheets">
{% for drawing in page.finding_plans %}{{ sheet(drawing, true, ()) }}
{% endfor %}</div>{% endif %}
</div>
</section>
"""

_KNOWN = """
<div class="flow last">
<section id="known" aria-labelledby="known-h"><h2 id="known-h">How the facts are known</h2>
<table class="basis"><caption>Facts of the house, counted by how they are known.</caption>
<thead><tr><th scope="col">Things</th><th scope="col" class="num">How many</th>
<th scope="col" class="num">Measured</th>
<th scope="col" class="num">Told</th><th scope="col" class="num">Guessed</th>
<th scope="col" class="num">Default</th></tr></thead>
<tbody>{% for row in page.basis_rows %}<tr><th scope="row">{{ row.things }}</th><td class="num">{{ row.count }}</td>
{% for count in row.by_basis %}<td class="num">{{ count }}</td>{% endfor %}</tr>
{% endfor %}</tbody></table>
<p class="small">
{% for basis, meaning in words.BASES.items() %}{{ basis|capitalize }}: {{ meaning }}. {% endfor %}</p>
<h3>What was guessed</h3>
{% if page.guessed %}{{ listed(page.guessed) }}{% else %}<p>Nothing is marked as guessed.</p>{% endif %}
{% if page.report %}<h3>What the intake read from {{ page.report.source }} ({{ page.report.form }})</h3>
<p>
{% for thing, count in page.report.counts %}{{- ", " if not loop.first }}{{ count }} {{ thing }}
{%- endfor %}.</p>
{% for heading, lines in (("Read", page.report.read), ("Guessed", page.report.guessed),
("Left out", page.report.left_out),
 ("Odd about the house as drawn", page.report.oddities)) %}{% if lines %}<h4>{{ heading }}</h4>
{{ listed(lines) }}{% endif %}
{% endfor %}{% endif %}
</section>
"""

_FOOT = """
<section id="figures" aria-labelledby="figures-h"><h2 id="figures-h">Figures used</h2>
<table><caption>Uncertain numbers of the world that these answers stand on:
likely, 5th and 95th percentile.</caption>
<thead><tr><th scope="col">Figure</th><th scope="col" class="num">Likely</th><th scope="col" class="num">Range</th>
<th scope="col">How known</th></tr></thead><tbody>
{% for row in page.figures %}<tr><th scope="row">{{ row.name }}</th>
<td class="num">{{ row.value }}{% if row.unit %}&nbsp;{{ row.unit }}{% endif %}</td>
<td class="num">{{ row.range }}</td><td>{{ row.mark }}</td></tr>
{% endfor %}</tbody></table>
{% for row in page.figures %}{% if row.source %}<p class="small">{{ row.name }}: {{ row.source }}.</p>
{% endif %}{% endfor %}</section>
<section id="cautions" aria-labelledby="cautions-h"><h2 id="cautions-h">Cautions</h2>
{{ listed(words.CAUTIONS) }}</section>
</div>
</main>
<footer><p><strong>{{ words.COPY_CLASS }}.</strong> {{ words.COPY_WARNING }}</p></footer>
</div>
</body>
</html>
"""

PAGE_TEMPLATE = (
    _MACROS.strip()
    + ANSWER_MACRO.rstrip()
    + "\n"
    + _HEAD
    + _SUMMARY
    + PLANS_TEMPLATE
    + ANSWERS_TEMPLATE
    + _FINDINGS
    + CAMPAIGN_TEMPLATE
    + _KNOWN
    + _FOOT
)
"""The template; every text that is put in is escaped, drawings and style excepted."""
