from __future__ import annotations

from html.parser import HTMLParser

from common.fitted import DAY, fitted
from wardwright.documents.content.paper import Column, Paper, Section, Table
from wardwright.documents.content.programming import programming_sheet
from wardwright.documents.writers.paper_html import write_paper_html
from wardwright.store.catalogue import load_catalogue

VOID = {"meta", "input"}


class Tags(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.open: list[str] = []
        self.links: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag not in VOID:
            self.open.append(tag)
        self.links += [value or "" for name, value in attrs if name in ("href", "src", "action")]

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag


def test_it_is_one_whole_file_that_asks_for_nothing() -> None:
    text = write_paper_html(programming_sheet(fitted(), load_catalogue(), drawn_up=DAY)).decode()
    page = Tags()
    page.feed(text)
    assert page.open == []
    assert page.links == []
    assert "<script" not in text
    assert "url(" not in text
    assert "never write one here" in text


def test_each_row_to_tick_has_its_box_with_a_name() -> None:
    text = write_paper_html(programming_sheet(fitted(), load_catalogue(), drawn_up=DAY)).decode()
    assert text.count('type="checkbox"') == text.count('aria-label="done: ') == 6 + 4 + 8 + 18


def test_words_of_users_are_escaped() -> None:
    name = "<script>alert(1)</script>"
    table = Table(name, (Column(name),), ((name,),))
    paper = Paper(name, name, "open", DAY, (Section(name, text=(name,), points=(name,), table=table),))
    text = write_paper_html(paper).decode()
    assert "<script" not in text
    assert text.count("&lt;script&gt;") >= 7
