from __future__ import annotations

import re
from typing import get_args

from wardwright.documents.content import wording
from wardwright.model.record import BASES
from wardwright.model.rows import Mark
from wardwright.model.site import Site
from wardwright.questions.answer import Verdict
from wardwright.rules.finding import Severity

PROMISES = re.compile(r"\b(certified|compliant|insurance approved|deters?)\b", re.IGNORECASE)


def texts(value: object) -> list[str]:
    if isinstance(value, str):
        return [value]
    if isinstance(value, dict):
        return [text for pair in value.items() for part in pair for text in texts(part)]
    return [text for part in value for text in texts(part)] if isinstance(value, tuple) else []


def test_every_state_has_its_words() -> None:
    assert set(wording.VERDICTS) == set(get_args(Verdict))
    assert set(wording.SEVERITIES) == set(get_args(Severity))
    assert set(wording.BASES) == set(BASES)
    assert set(wording.MARKS) == set(get_args(Mark))


def test_what_was_not_run_is_said_not_to_be_a_pass() -> None:
    assert "not a pass" in wording.SEVERITIES["not run"][1]


def test_the_catalogue_promises_nothing() -> None:
    found = [text for name, value in vars(wording).items() if name.isupper() for text in texts(value)]
    assert len(found) > 80
    assert not [text for text in found if PROMISES.search(text)]


def test_the_cautions_are_all_there() -> None:
    told = " ".join((*wording.WHAT_IT_IS, *wording.WHAT_IT_IS_NOT, *wording.CAUTIONS)).lower()
    for word in (
        "competent person",
        "certificate",
        "fire",
        "electrician",
        "ladder",
        "asbestos",
        "pipes",
        "window",
    ):
        assert word in told


def test_the_things_of_a_site_are_lists_of_it() -> None:
    assert set(wording.THINGS) <= set(Site.model_fields)
