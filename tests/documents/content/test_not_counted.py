from __future__ import annotations

import json

from wardwright.documents.content.not_counted import counted, is_not_counted, not_counted
from wardwright.documents.content.page import page_of
from wardwright.documents.writers.text import answers_json, answers_text
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.answer import NOT_COUNTED, Answer
from wardwright.questions.race_from_opening import answers as race_answers
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample


def _high(name: str, reason: str) -> Answer:
    return Answer(
        question=1, subject=name, subject_id=name, measure="time in hand", estimate=None,
        reason=NOT_COUNTED + reason, verdict="unknown",
    )  # fmt: skip


HIGH = (
    _high("landing window", "4.0 m up"),
    _high("bath window", "3.8 m up"),
    _high("attic window", "3.8 m up"),
)


def test_openings_are_told_together_by_reason() -> None:
    found = not_counted(HIGH)
    assert found is not None
    assert found.heading == "3 openings not counted as ways in"
    assert found.groups == ("3.8 m up: attic window and bath window.", "4.0 m up: landing window.")
    single = not_counted(HIGH[:1])
    assert single is not None
    assert single.heading == "1 opening not counted as a way in"


def test_what_is_not_known_stays_by_itself(answers: tuple[Answer, ...]) -> None:
    assert not_counted(answers) is None
    assert counted((*answers, *HIGH)) == answers


def test_the_page_counts_them_apart_from_what_is_not_known(
    site: Site, catalogue: Catalogue, answers: tuple[Answer, ...]
) -> None:
    page = page_of(site, catalogue, (*answers, *HIGH), ())
    assert {row.verdict: row.count for row in page.counts}["unknown"] == 1
    assert len(page.answers) == len(answers)
    assert page.not_counted is not None
    assert page.not_counted.count == 3


def test_the_terminal_has_one_line_for_them_and_json_has_each() -> None:
    text = answers_text(HIGH)
    assert text.startswith("NOT COUNTED  3 openings not counted as ways in\n")
    assert "NOT KNOWN" not in text
    assert len(json.loads(answers_json(HIGH))["answers"]) == 3


def test_the_question_words_its_reason_as_it_is_read_here() -> None:
    found = race_answers(read_sample("terrace"), load_catalogue())
    assert sum(map(is_not_counted, found)) == sum(answer.verdict == "unknown" for answer in found) > 0
