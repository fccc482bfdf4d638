"""The part of the page that a campaign of seeded intruders has, where they were sent in."""

from __future__ import annotations

CAMPAIGN_TEMPLATE = """
{% if page.campaign %}
<section id="campaign" aria-labelledby="campaign-h"><h2 id="campaign-h">What seeded intruders did</h2>
<div class="flow">
{% for section in page.campaign %}<div class="campaign"><h3>{{ section.heading }}</h3>
{% for text in section.text %}<p>{{ text }}</p>
{% endfor %}
{% if section.points %}{{ listed(section.points) }}{% endif %}
{% if section.drawing %}{% if section.drawing.styles_used %}{{ sheet(section.drawing, false, ()) }}
{% else %}<div class="strip">{{ svg(section.drawing) }}</div>{% endif %}{% endif %}
{% if section.table %}<table><thead><tr>
{% for column in section.table.columns %}<th scope="col">{{ heading(column) }}</th>
{% endfor %}</tr></thead><tbody>
{% for row in section.table.rows %}<tr>{% for cell in row %}<td>{{ cell }}</td>{% endfor %}</tr>
{% endfor %}</tbody></table>{% endif %}</div>
{% endfor %}</div>
</section>{% endif %}
"""
"""Uses the macros of the page; nothing stands there where there was no campaign."""
