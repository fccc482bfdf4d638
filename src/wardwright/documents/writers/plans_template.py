"""The part of the page that shows what is noticed, storey by storey."""

from __future__ import annotations

PLANS_TEMPLATE = """
<section id="plans" aria-labelledby="plans-h"><h2 id="plans-h">Plans: what is noticed</h2>
<div class="sheets">
{% for storey in page.storeys %}{{ sheet(storey.shown, true, storey.devices) }}
{% endfor %}</div>
{% for storey in page.storeys %}{% if storey.remark %}<p>{{ storey.name }}: {{ storey.remark }}</p>{% endif %}
{% endfor %}
</section>
"""
"""Uses the macros of the page."""
