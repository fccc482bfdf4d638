"""Question 20: something changed; which answers fail now, and what must be tested again?"""

from __future__ import annotations

from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.answer import Answer, about_the_site

NUMBER = 20
MEASURE = "repeating the tests that the changes call for"
NO_EARLIER = (
    "nothing to compare with; 'wardwright compare A B' holds two states of a house against each other"
)


def answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """The answer about a house of which no earlier state is known; `changes_since` has the other."""
    del catalogue
    return (about_the_site(NUMBER, MEASURE, site=site, reason=NO_EARLIER),)
