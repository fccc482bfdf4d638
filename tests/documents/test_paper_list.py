from __future__ import annotations

import re

from structure.source_tree import ROOT
from wardwright.documents.content.copies import COPIES
from wardwright.documents.paper_list import PAGE, QUOTES, TITLES, paper_classes, paper_names
from wardwright.store.samples import read_sample


def test_every_class_of_copy_has_papers_and_no_name_is_in_two() -> None:
    site = read_sample("terrace")
    assert [one.copy_class for one in paper_classes(site)] == list(COPIES)
    names = [name for titles in TITLES.values() for name in titles]
    assert len(set(names)) == len(names)


def test_the_list_that_is_shown_is_the_list_that_is_written() -> None:
    site = read_sample("terrace")
    shown = {
        f"{COPIES[one.copy_class].folder}/{paper.name}" for one in paper_classes(site) for paper in one.papers
    }
    assert shown == set(paper_names(site))
    assert sum(name.endswith(".svg") for name in shown) == len(site.storeys)


def test_the_guide_to_the_papers_names_every_paper_and_no_other() -> None:
    text = (ROOT / "docs" / "papers.md").read_text(encoding="utf-8")
    part = text.partition("## Which document of a job is where")[2].partition("\n## ")[0]
    named = set(re.findall(r"`([\w-]+\.\w+)`", part))
    written = {name for titles in TITLES.values() for name in titles} | set(QUOTES.values())
    assert named == written - {PAGE}
