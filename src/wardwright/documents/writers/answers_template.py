"""The page's section of answers: one article each, those that are met folded under one line."""

from __future__ import annotations

ANSWER_MACRO = """
{% macro article(answer) %}
<article class="answer {{ answer.verdict }}" id="{{ answer.key }}" aria-labelledby="{{ answer.key }}-h">
<div class="answer-grid{% if not answer.drawings %} lone
{%- elif answer.drawings|length > 1 and answer.is_open %} pair{% endif %}"><div class="told">
<div class="top"><p class="kicker">{{ mark(answer.verdict) }}<b>{{ answer.verdict_word }}</b>
<span>question {{ answer.question }}</span></p>
<h3 id="{{ answer.key }}-h"><span>{{ answer.heading }}</span> {{ answer.subject }}</h3>
<p class="value">{{ answer.value }}{% if answer.range %}<span class="range">{{ answer.range }}</span>{% endif %}</p>
<p class="measure">{{ answer.measure }}{% if answer.chance %}; {{ answer.chance }}{% endif %}</p>
{% if answer.range_line %}<div class="line">{{ svg(answer.range_line) }}</div>{% endif %}
{% if answer.reason %}<p><strong>{{ answer.reason }}</strong></p>{% endif %}</div>
{% if answer.strip %}<div class="strip">{{ svg(answer.strip) }}</div>{% endif %}
{% if answer.told %}<p class="order">{{ answer.told|join(" ") }}</p>{% endif %}
{% if answer.numbers %}<table class="numbers"><tbody>
{% for line in answer.numbers %}<tr><th scope="row">{{ line.name }}</th><td class="num">{{ line.value }}</td>
<td class="num">{{ line.range or line.reason }}</td></tr>
{% endfor %}</tbody></table>{% endif %}
{% if answer.notes %}{{ listed(answer.notes) }}{% endif %}
{% if answer.drivers %}<h4>Moved most by</h4><ul class="drivers">
{% for driver in answer.drivers %}<li><i style="--share:{{ driver.share }}">
</i>{{ driver.name }}: {{ driver.swing }}
<span class="small">({{ driver.basis_words }})</span></li>
{% endfor %}</ul>{% endif %}
{% if answer.mends %}<h4>What would mend it</h4><div class="mends">{{ listed(answer.mends) }}</div>{% endif %}
</div>
{% if answer.drawings %}<div class="drawn{% if not answer.is_open %} folded{% endif %}">
{% if not answer.is_open %}<details><summary>Drawn on the plan
<span class="unseen">for {{ answer.subject }}, question {{ answer.question }}</span></summary>{% endif %}
<div class="side">
{% for drawing in answer.drawings %}{{ sheet(drawing, true, ()) }}{% endfor %}</div>
{% if not answer.is_open %}</details>{% endif %}</div>{% endif %}
</div>
</article>
{% endmacro %}
"""
"""One answer; it stands on the page's own macros."""

ANSWERS_TEMPLATE = """
<section id="answers" aria-labelledby="answers-h"><h2 id="answers-h">Answers, worst first</h2>
{% if not page.answers %}<p>No question was asked.</p>{% endif %}
<div class="flow">
{% for answer in page.answers if answer.verdict != "good" %}{{ article(answer) }}{% endfor %}
{% set met = page.answers|selectattr("verdict", "equalto", "good")|list %}
{% if met %}<details class="met"{% if met|length == page.answers|length %} open{% endif %}>
<summary>{{ mark("good") }}<b>{{ met|length }}</b> {{ words.MET_FOLDED }}</summary>
{% for answer in met %}{{ article(answer) }}{% endfor %}</details>{% endif %}
{% if page.not_counted %}
<article class="answer not-counted" id="not-counted" aria-labelledby="not-counted-h">
<div class="top"><p class="kicker">{{ mark("not-counted") }}<b>not counted</b><span>question 1</span></p>
<h3 id="not-counted-h">{{ page.not_counted.heading }}</h3></div>
{{ listed(page.not_counted.groups) }}</article>{% endif %}
</div>
</section>
"""
"""The section."""
