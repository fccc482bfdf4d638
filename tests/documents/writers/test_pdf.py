from __future__ import annotations

import ctypes
import re
from dataclasses import replace
from typing import Any

import pypdfium2
import pytest

from common.fitted import DAY, fitted
from wardwright.documents.content.forms.label_sheet import label_sheet
from wardwright.documents.content.forms.proposal import proposal
from wardwright.documents.content.paper import Column, Logo, Paper, PaperSize, Section, Table
from wardwright.documents.content.plan_sheets import plan_sheets
from wardwright.documents.content.programming import programming_sheet
from wardwright.documents.drawing.recording import Drawing, Recorder
from wardwright.documents.press import Press
from wardwright.documents.writers.pdf import write_pdf
from wardwright.errors import InputError
from wardwright.server.page_pictures import page_picture
from wardwright.store.catalogue import load_catalogue
from wardwright.store.fonts import font_folder
from wardwright.store.samples import read_sample, sample_names

POINTS_A_MM = 72.0 / 25.4
A4 = (210.0 * POINTS_A_MM, 297.0 * POINTS_A_MM)
CATALOGUE = load_catalogue()


def written(paper: Paper) -> bytes:
    return write_pdf(paper, font_folder=font_folder())


def boxes_mm(content: bytes, page: int = 0) -> list[tuple[float, float]]:
    """Width and height of everything that is drawn on a page. [mm]"""
    with pypdfium2.PdfDocument(content) as book:
        bounds = [
            one.get_bounds()
            for one in book[page].get_objects(max_depth=12)
            if one.type == pypdfium2.raw.FPDF_PAGEOBJ_PATH
        ]
    return [((x1 - x0) / POINTS_A_MM, (y1 - y0) / POINTS_A_MM) for x0, y0, x1, y1 in bounds]


@pytest.mark.parametrize("scale", [20, 50, 100, 200])
def test_a_wall_of_a_metre_is_as_long_on_paper_as_the_scale_says(scale: int) -> None:
    """At 1:100 a metre of wall is 10 mm: measured on the vectors in the file."""
    recorder = Recorder()
    recorder.polygon("wall-else", (((1.0, 1.0), (2.0, 1.0), (2.0, 1.3), (1.0, 1.3)),))
    drawing = Drawing(
        key="wall", title="wall", description="a wall", bounds=(0.0, 0.0, 3.0, 2.0), mm_per_unit=1000.0 / scale,
        own=recorder.recording(),
    )  # fmt: skip
    found = boxes_mm(written(Paper("Plan", "house", "fitter", DAY, (Section("Ground", drawing=drawing),))))
    mm = 1000.0 / scale
    assert any(
        wide == pytest.approx(mm, abs=0.02) and high == pytest.approx(0.3 * mm, abs=0.02)
        for wide, high in found
    )


def test_the_house_on_the_plan_is_to_scale() -> None:
    """From its notes the terrace is 5.03 m by 9.0 m outside: 100.6 mm by 180 mm at 1:50, and the ink of its edge."""
    paper = plan_sheets(read_sample("terrace"), CATALOGUE, drawn_up=DAY)
    wide, high = (0.215 + 1.8 + 0.1 + 2.7 + 0.215) * 20.0, (0.3 + 4.6 + 0.1 + 3.7 + 0.3) * 20.0
    ink = pytest.approx(0.25, abs=0.26)
    assert paper.title == "Plan, 1:50"
    assert any(x - wide == ink and y - high == ink for x, y in boxes_mm(written(paper)))


def test_each_storey_is_one_page_of_a4_with_its_text() -> None:
    content = written(plan_sheets(fitted(), CATALOGUE, drawn_up=DAY))
    with pypdfium2.PdfDocument(content) as book:
        assert len(book) == 2
        for page, storey in zip(book, ("Ground floor", "First floor"), strict=True):
            assert page.get_size() == pytest.approx(A4, abs=0.5)
            text = page.get_textpage().get_text_range()
            assert storey in text
            assert "2 m, 1:50" in text
            assert "Fitter\u2019s copy" in text


def test_it_is_tagged_told_in_words_and_carries_its_own_letters() -> None:
    content = written(plan_sheets(fitted(), CATALOGUE, drawn_up=DAY))
    assert b"/StructTreeRoot" in content
    assert b"pdfuaid" in content
    with pypdfium2.PdfDocument(content) as book:
        letters = [
            one.get_font()
            for page in book
            for one in page.get_objects(max_depth=12)
            if one.type == pypdfium2.raw.FPDF_PAGEOBJ_TEXT
        ]
        fonts = {one.get_base_name() for one in letters}
        assert all(one.is_embedded for one in letters)
    assert fonts
    assert all("LiberationSans" in font for font in fonts), fonts


def tags_of(content: bytes) -> set[str]:
    """Kinds of tag in a file, by another hand than the one that wrote them."""
    raw, found = pypdfium2.raw, set()

    def kind(element: Any) -> str:
        size = raw.FPDF_StructElement_GetType(element, None, 0)
        buffer = ctypes.create_string_buffer(size)
        raw.FPDF_StructElement_GetType(element, buffer, size)
        return buffer.raw.decode("utf-16-le").rstrip("\x00")

    def walk(element: Any) -> None:
        found.add(kind(element))
        for i in range(raw.FPDF_StructElement_CountChildren(element)):
            child = raw.FPDF_StructElement_GetChildAtIndex(element, i)
            if child:
                walk(child)

    with pypdfium2.PdfDocument(content) as book:
        for page in book:
            tree = raw.FPDF_StructTree_GetForPage(page)
            for i in range(raw.FPDF_StructTree_CountChildren(tree)):
                walk(raw.FPDF_StructTree_GetChildAtIndex(tree, i))
            raw.FPDF_StructTree_Close(tree)
    return found


def test_headings_tables_lists_and_pictures_are_tagged() -> None:
    site = fitted()
    assert {"H1", "H2", "L", "LI", "P", "Table", "TH", "TR", "TD"} <= tags_of(
        written(proposal(site, CATALOGUE, (), drawn_up=DAY))
    )
    assert {"Figure", "H1", "H2"} <= tags_of(written(plan_sheets(site, CATALOGUE, drawn_up=DAY)))
    assert "Figure" in tags_of(written(label_sheet(site, CATALOGUE, drawn_up=DAY)))


LONG = Table("T", (Column("Heading"), Column("Slot")), tuple((f"row {i}.", "") for i in range(90)))


@pytest.mark.parametrize("size", ["a4", "letter"])
@pytest.mark.parametrize("table", [LONG, replace(LONG, is_filled_in=True), replace(LONG, is_ticked=True)])
def test_a_long_table_has_its_head_on_every_page(table: Table, size: PaperSize) -> None:
    content = write_pdf(
        Paper("T", "h", "open", DAY, (Section("S", table=table),)), font_folder=font_folder(), size=size
    )
    with pypdfium2.PdfDocument(content) as book:
        texts = [page.get_textpage().get_text_range() for page in book]
    assert len(texts) > 1
    assert all("Heading" in text for text in texts)
    assert all(sum(f"row {i}." in text for text in texts) == 1 for i in range(90))


@pytest.mark.parametrize("lines", range(36, 60, 2))
def test_no_heading_is_left_alone_at_the_foot_of_a_page(lines: int) -> None:
    """Wherever it falls, a heading stands on one page with the head and the first row of its table."""
    filling = Section("Before", text=tuple(f"line {i}" for i in range(lines)))
    content = written(Paper("T", "h", "open", DAY, (filling, Section("Lonely", table=LONG))))
    with pypdfium2.PdfDocument(content) as book:
        texts = [page.get_textpage().get_text_range() for page in book]
    (page,) = [text for text in texts if "Lonely" in text]
    assert "Heading" in page
    assert "row 0." in page


def test_a_form_begins_a_page_and_has_the_head_of_the_paper_again() -> None:
    sections = (Section("One", blanks=("Name",)), Section("Two", rules=3, is_form=True))
    with pypdfium2.PdfDocument(written(Paper("Title", "h", "open", DAY, sections))) as book:
        texts = [page.get_textpage().get_text_range() for page in book]
    assert len(texts) == 2
    assert all("Title" in text for text in texts)
    assert "Two" in texts[1]


def test_the_same_paper_gives_the_same_bytes_and_another_day_others() -> None:
    paper = programming_sheet(fitted(), CATALOGUE, drawn_up=DAY)
    assert written(paper) == written(paper)
    later = programming_sheet(fitted(), CATALOGUE, drawn_up=DAY.replace(day=27))
    assert written(later) != written(paper)


def test_words_of_users_are_never_read_as_orders() -> None:
    names = (
        '#panic("no")',
        "*bold* _it_ $x$",
        "<label> @ref",
        '#read("/etc/passwd")',
        "// gone",
        "\\u{41}",
        "a" * 90,
    )
    table = Table("T", (Column("Name"),), tuple((name,) for name in names))
    paper = Paper(
        names[0], names[1], "open", DAY, (Section(names[2], text=names, points=names, table=table),)
    )
    with pypdfium2.PdfDocument(written(paper)) as book:
        text = "".join(book[i].get_textpage().get_text_range() for i in range(len(book)))
    told = re.sub(r"\s", "", text)
    for name in names[:-1]:
        # In the title, the list, the table: as it was given.
        assert told.count(re.sub(r"\s", "", name)) >= 3, name


def test_a_paper_without_rows_says_none() -> None:
    paper = Paper("T", "h", "open", DAY, (Section("S", table=Table("S", (Column("One"),), ())),))
    with pypdfium2.PdfDocument(written(paper)) as book:
        assert "None." in book[0].get_textpage().get_text_range()


@pytest.mark.parametrize("name", ["\u5ba2\u5385", "\U0001f642 kitchen", "a\x00b", "\x07", "\ud7ff\u0301"])
def test_a_name_in_letters_that_cannot_be_shown_stops_no_paper(name: str) -> None:
    site = read_sample("one-room")
    spaces = tuple(one.model_copy(update={"name": name}) for one in site.spaces)
    named = site.model_copy(update={"spaces": spaces, "name": name})
    with pypdfium2.PdfDocument(written(plan_sheets(named, CATALOGUE, drawn_up=DAY))) as book:
        text = book[0].get_textpage().get_text_range()
    assert "stands for a letter that this paper cannot show" in " ".join(text.split())
    assert "\u25a1" in text


def test_names_in_the_letters_of_europe_are_shown_whole() -> None:
    names = (
        "\u0141\u00f3d\u017a \u0106wiek",
        "\u0395\u03bb\u03bb\u03ac\u03b4\u03b1",
        "\u041a\u0443\u0445\u043d\u044f",
        "K\u00fcche \u00df \u00f1",
    )
    with pypdfium2.PdfDocument(written(Paper("T", "h", "open", DAY, (Section("S", text=names),)))) as book:
        text = book[0].get_textpage().get_text_range()
    assert all(name in text for name in names)
    assert "cannot show" not in text


@pytest.mark.parametrize("size", ["a4", "letter"])
@pytest.mark.parametrize("name", sample_names())
def test_each_storey_of_a_sample_fits_one_page_with_its_key(name: str, size: PaperSize) -> None:
    site = read_sample(name)
    paper = plan_sheets(site, CATALOGUE, drawn_up=DAY, size=size)
    with pypdfium2.PdfDocument(write_pdf(paper, font_folder=font_folder(), size=size)) as book:
        assert len(book) == len(site.storeys)


def test_a_firms_logo_stands_above_the_title_and_a_broken_one_is_refused() -> None:
    paper = Paper("Quote", "house", "client", DAY, (Section("One", text=("Words.",)),))
    picture = page_picture(written(paper), 1, width_px=80)  # any PNG will do
    logo = Logo("ours.png", picture, "Logo of Example Alarms")
    content = write_pdf(paper, font_folder=font_folder(), logo=logo)
    with pypdfium2.PdfDocument(content) as book:
        kinds = [one.type for one in book[0].get_objects(max_depth=12)]
        assert kinds.count(pypdfium2.raw.FPDF_PAGEOBJ_IMAGE) == 1
    assert b"Logo of Example Alarms" in content
    for broken in (b"", b"no picture", picture[:60]):
        with pytest.raises(InputError, match="cannot be drawn"):
            write_pdf(paper, font_folder=font_folder(), logo=Logo("ours.png", broken, "x"))


def test_only_what_a_client_gets_bears_the_logo() -> None:
    first = Paper("Quote", "house", "client", DAY, (Section("One", text=("Words.",)),))
    logo = Logo("ours.png", page_picture(written(first), 1, width_px=80), "Logo of Example Alarms")
    press = Press(font_folder(), "a4", logo)
    for copy in ("fitter", "client", "open"):
        paper = Paper("Any", "house", copy, DAY, (Section("One", text=("Words.",)),))
        assert (b"Logo of Example Alarms" in press.pdf(paper)) == (copy == "client")
