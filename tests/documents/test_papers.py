from __future__ import annotations

import io
from collections.abc import Callable

import openpyxl
import pypdfium2
import pytest

from common.fitted import DAY, fitted
from documents.writers.test_pdf import tags_of
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


def test_every_pdf_opens_in_another_reader_tagged_with_its_letters_in_it() -> None:
    site = fitted()
    pdfs = {name: content for name, content in papers(site).items() if name.endswith(".pdf")}
    assert len(pdfs) > 15
    for name, content in pdfs.items():
        assert {"H1", "H2"} <= tags_of(content), name
        with pypdfium2.PdfDocument(content) as book:
            assert site.name in book.get_metadata_value("Title"), name
            for page in book:
                letters = [
                    one.get_font()
                    for one in page.get_objects(max_depth=12)
                    if one.type == pypdfium2.raw.FPDF_PAGEOBJ_TEXT
                ]
                assert letters, name
                assert all(one.is_embedded and "LiberationSans" in one.get_base_name() for one in letters), (
                    name
                )
                assert "page " in page.get_textpage().get_text_range(), name


def test_no_paper_is_empty_and_thirty_pages_are_small() -> None:
    pages, size = 0, 0
    for name, content in papers(fitted()).items():
        assert content, name
        if name.endswith(".pdf"):
            with pypdfium2.PdfDocument(content) as book:
                pages += len(book)
            size += len(content)
    assert pages >= 30
    assert size / pages * 30 < 3e6
