from __future__ import annotations

import math
import re
from pathlib import Path

import pytest

from wardwright.documents.drawing.devices import ABBREVIATIONS, device_tags
from wardwright.documents.drawing.inks import box_size_mm
from wardwright.documents.drawing.plan import base_plan
from wardwright.documents.drawing.recording import Box, Circle, Tick
from wardwright.documents.drawing.sheet import HALF, QUARTER, WHOLE, Room, sheet_for
from wardwright.model.catalogue import Catalogue
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample, sample_names


def test_letters_and_numbers_for_each_device(site: Site, catalogue: Catalogue) -> None:
    tags = device_tags(site, catalogue)
    assert {tag.text for tag in tags.values()} == {
        "CU", "KP", "MD1", "MD2", "MD3", "SO", "SI", "OC1", "OC2",
    }  # fmt: skip
    assert tags["siren-out"].words == "sounder, outside"


def test_no_two_kinds_share_letters() -> None:
    letters = [text for text, _ in ABBREVIATIONS.values()]
    assert len(set(letters)) == len(letters)


def test_a_device_without_a_sheet_is_marked_not_guessed(site: Site) -> None:
    assert {tag.text[0] for tag in device_tags(site, Catalogue()).values()} == {"?"}


def test_each_device_is_a_dot_in_its_place_and_letters_clear_of_the_others(
    site: Site, catalogue: Catalogue
) -> None:
    base = base_plan(site, catalogue, storey_id="ground", sheet=sheet_for(site))
    strokes = [verb for layer, verb in base.recording.strokes if layer == "devices"]
    dots = [verb.centre for verb in strokes if isinstance(verb, Circle)]
    stands = [standing(site, device) for device in site.devices]
    assert sorted(dots) == sorted((s.x_m, s.y_m) for s in stands if s.storey == "ground")
    boxes = [base.board.rectangle(verb.centre, (7.0, 3.9)) for verb in strokes if isinstance(verb, Box)]
    assert len(boxes) == len(dots)
    assert all(a.shared(b) == 0.0 for i, a in enumerate(boxes) for b in boxes[:i])


@pytest.mark.parametrize("name", sample_names())
@pytest.mark.parametrize("room", [WHOLE, HALF, QUARTER], ids=["whole", "half", "quarter"])
def test_no_letters_of_a_sample_lie_on_others_or_on_a_sign(name: str, room: Room) -> None:
    site = read_sample(name)
    sheet = sheet_for(site, room=room)
    for storey in site.storeys:
        base = base_plan(site, load_catalogue(), storey_id=storey.id, sheet=sheet)
        boxes = [verb for _, verb in base.recording.strokes if isinstance(verb, Box)]
        lie = [base.board.rectangle(verb.centre, box_size_mm("device", verb.text)) for verb in boxes]
        assert len(lie) == len(base.devices)
        for letters, one in zip(boxes, lie, strict=True):
            met = [other for other in base.board.taken if other != one and one.shared(other) > 1e-9]
            assert met == [], (letters.text, storey.id)


def test_the_tick_stands_where_a_detector_looks(site: Site, catalogue: Catalogue) -> None:
    base = base_plan(site, catalogue, storey_id="first", sheet=sheet_for(site))
    (tick,) = [verb for _, verb in base.recording.strokes if isinstance(verb, Tick)]
    stand = standing(site, site.device("md-landing"))
    turn = math.degrees(math.atan2(tick.at[1] - stand.y_m, tick.at[0] - stand.x_m)) % 360.0
    assert turn == pytest.approx(250.0)


def test_the_page_on_reading_names_every_abbreviation() -> None:
    page = (Path(__file__).resolve().parents[3] / "docs" / "page.md").read_text(encoding="utf-8")
    told = set(re.findall(r"\b[A-Z]{2}\b", page.partition("| letters |")[2].partition("\n\n")[0]))
    assert told == {letters for letters, _ in ABBREVIATIONS.values()} | {"SO", "CX"}
