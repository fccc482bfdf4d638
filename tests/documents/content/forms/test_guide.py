from __future__ import annotations

import io
from collections.abc import Callable

import pypdfium2
import pytest

from common.fitted import DAY, as_text, fitted
from wardwright.documents.content.forms.guide import guide
from wardwright.documents.content.paper import PaperSize
from wardwright.documents.press import Press
from wardwright.store.catalogue import load_catalogue
from wardwright.store.fonts import font_folder
from wardwright.store.samples import read_sample, sample_names

CATALOGUE = load_catalogue()


def test_the_guide_reads_as_it_did(kept: Callable[[str, str], None]) -> None:
    kept("guide.txt", as_text(guide(fitted(), CATALOGUE, drawn_up=DAY)))


@pytest.mark.parametrize("size", ["a4", "letter"])
@pytest.mark.parametrize("name", sample_names())
def test_it_is_one_page(name: str, size: PaperSize) -> None:
    content = Press(font_folder(), size).pdf(guide(read_sample(name), CATALOGUE, drawn_up=DAY))
    with pypdfium2.PdfDocument(io.BytesIO(content)) as book:
        assert len(book) == 1


def test_it_is_made_for_this_house() -> None:
    site = fitted()
    told = as_text(guide(site, CATALOGUE, drawn_up=DAY))
    assert "Come in by Front door only" in told
    assert "keypad (Hall)" in told
    assert "nobody goes into: Hall" in told
    alone = site.model_copy(update={"pets": (), "people": ()})
    assert as_text(guide(alone, CATALOGUE, drawn_up=DAY)) == told, "it may lie about: it tells of nobody"
    lenient = site.programme.model_copy(update={"if_open_when_setting": "inhibit"})
    other = as_text(guide(site.model_copy(update={"programme": lenient}), CATALOGUE, drawn_up=DAY))
    assert "is left out until you unset again" in other
    assert "does not set" not in other


def test_a_house_without_kit_promises_no_door_and_no_keypad() -> None:
    site = read_sample("one-room")
    told = as_text(guide(site.model_copy(update={"devices": (), "zones": ()}), CATALOGUE, drawn_up=DAY))
    assert "as we showed you" in told
    assert "At home:" not in told
