"""Question 13: what level reaches each pillow, each ear near a sounder, the street and the neighbours?"""

from __future__ import annotations

from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.answer import Answer, about_the_site
from wardwright.questions.heard_at_pillows import MEASURE, answers_at_pillows
from wardwright.questions.heard_fire_alarms import answers_of_fire_alarms
from wardwright.questions.heard_near import answers_near
from wardwright.questions.heard_outside import answers_outside
from wardwright.rules.pillows import pillows
from wardwright.rules.sound_heard import FIRE_KINDS, INTRUDER_KINDS, sounders

NUMBER = 13
"""Of the question."""


def answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """An answer for each pillow, each sounder inside, each fire or CO alarm, and each place outside that is drawn."""
    return _answers(site, catalogue, with_mends=True)


def without_mends(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """The same without what would mend it."""
    return _answers(site, catalogue, with_mends=False)


def _answers(site: Site, catalogue: Catalogue, *, with_mends: bool) -> tuple[Answer, ...]:
    intruder = sounders(site, catalogue, INTRUDER_KINDS)
    fire = sounders(site, catalogue, FIRE_KINDS)
    has_pillows = bool(pillows(site))
    lacking = [
        words
        for words, lacks in (
            ("no sounder, and no control unit whose sheet states the level of its own", not intruder),
            ("no bed, no bedroom and nobody who is told to sleep anywhere", not has_pillows),
        )
        if lacks
    ]
    found: list[Answer] = []
    if lacking:
        found.append(about_the_site(NUMBER, MEASURE, site=site, reason="; ".join(lacking)))
    if intruder and has_pillows:
        found += answers_at_pillows(site, catalogue, intruder, with_mends=with_mends)
    if intruder:
        found += answers_near(site, catalogue, intruder)
        found += answers_outside(site, catalogue, intruder)
    found += answers_of_fire_alarms(site, catalogue, fire, with_mends=with_mends)
    return tuple(found)
