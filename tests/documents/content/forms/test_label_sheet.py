from __future__ import annotations

from collections.abc import Callable

from common.fitted import DAY, as_text, codes_of, fitted
from wardwright.documents.content.forms.label_sheet import label_sheet
from wardwright.documents.press import Press
from wardwright.store.catalogue import load_catalogue
from wardwright.store.fonts import font_folder

CATALOGUE = load_catalogue()


def test_the_labels_read_as_they_did(kept: Callable[[str, str], None]) -> None:
    kept("labels.txt", as_text(label_sheet(fitted(), CATALOGUE, drawn_up=DAY)))


def test_a_reader_finds_number_and_name_of_every_device_on_the_printed_sheet() -> None:
    site = fitted()
    paper = label_sheet(site, CATALOGUE, drawn_up=DAY)
    labels = paper.sections[0].labels
    found = codes_of(Press(font_folder()).pdf(paper))
    assert sorted(found) == sorted(label.code for label in labels)
    assert len(found) == len(site.devices)
    assert "CU control unit" in found
    assert "OC1 Ground front door contact" in found


def test_a_house_without_kit_says_so() -> None:
    bare = fitted().model_copy(update={"devices": (), "zones": ()})
    assert "No devices." in as_text(label_sheet(bare, CATALOGUE, drawn_up=DAY))
