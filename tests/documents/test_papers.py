from __future__ import annotations

import io
from collections.abc import Callable

import openpyxl
import pytest

from common.fitted import DAY, fitted
from wardwright.documents.content.label_list import label_table
from wardwright.documents.content.page import page_of
from wardwright.documents.paper_list import paper_names
from wardwright.documents.papers import papers_of
from wardwright.documents.press import Press
from wardwright.documents.writers.csv_rows import write_csv
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.store.fonts import font_folder
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def papers(site: Site) -> dict[str, bytes]:
    page = page_of(site, CATALOGUE, (), ())
    return papers_of(site, CATALOGUE, page=page, answers=(), drawn_up=DAY, press=Press(font_folder()))


@pytest.mark.parametrize("name", ["one-room", "terrace"])
def test_the_files_are_those_that_were_named_beforehand(name: str) -> None:
    site = read_sample(name)
    files = papers(site)
    assert sorted(files) == sorted(paper_names(site))
    assert all(files.values())


def test_the_same_day_gives_the_same_bytes() -> None:
    assert papers(fitted()) == papers(fitted())


def test_a_site_without_kit_has_all_its_papers() -> None:
    site = read_sample("terrace")
    bare = site.model_copy(update={"devices": (), "zones": ()})
    assert sorted(papers(bare)) == sorted(paper_names(site))


def test_the_labels_for_a_printer_read_as_they_did(kept: Callable[[str, str], None]) -> None:
    kept(
        "labels.csv.txt",
        write_csv(label_table(fitted(), CATALOGUE)).decode("utf-8-sig").replace("\r\n", "\n"),
    )


def test_the_tests_can_be_typed_into_as_a_spreadsheet() -> None:
    book = openpyxl.load_workbook(io.BytesIO(papers(fitted())["fitter/tests.xlsx"]))
    assert {"Radio", "Walk test", "Tamper", "Messages"} <= set(book.sheetnames)
    sheet = book["Tamper"]
    heading = [cell.value for cell in sheet[1]]
    assert heading[-3:] == ["Lid", "Off its wall", "Shown as"]
    assert sheet.max_row == 1 + len(fitted().devices)
    assert not any(sheet.cell(2, 1 + heading.index(one)).value for one in heading[-3:])
