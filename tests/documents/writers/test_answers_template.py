"""The answers on the page: what is not met stands open, what is met is folded."""

from __future__ import annotations

import re

from wardwright.documents.content.page import page_of
from wardwright.documents.writers.html import write_html
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample


def section_of(numbers: tuple[int, ...]) -> str:
    site, catalogue = read_sample("terrace"), load_catalogue()
    text = write_html(page_of(site, catalogue, ask(site, catalogue, numbers), ())).decode()
    return text[text.index('<section id="answers"') : text.index('<section id="findings"')]


def test_answers_that_are_met_stand_in_one_fold_and_the_others_before_it() -> None:
    before, fold = section_of((1, 5, 6)).split('<details class="met">')
    within = fold[: fold.rindex("</details>")]
    assert set(re.findall(r'class="answer ([a-z-]+)"', before)) == {"bad", "thin"}
    assert set(re.findall(r'class="answer ([a-z-]+)"', within)) == {"good"}
    assert f"<b>{within.count('<article')}</b>" in within


def test_the_fold_stands_open_where_nothing_else_is_there() -> None:
    assert '<details class="met" open>' in section_of((6,))
