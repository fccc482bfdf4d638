from __future__ import annotations

import shapely

from wardwright.documents.drawing.inks import INKS
from wardwright.documents.drawing.labels import Board
from wardwright.documents.drawing.recording import Recorder, Text
from wardwright.documents.drawing.sheet import Sheet
from wardwright.documents.drawing.space_names import draw_names, short_names
from wardwright.model.fabric import Space
from wardwright.model.site import Site

NOTHING = shapely.Polygon()


def _space(name: str, wide: float, high: float, **more: object) -> Space:
    ring = ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high))
    return Space.model_validate(
        {"id": name.lower().replace(" ", "-"), "name": name, "storey": "g", "outline_m": ring} | more
    )


def _named(
    *spaces: Space, clear: shapely.Geometry = NOTHING, width_m: float = 9.0
) -> tuple[list[Text], tuple[tuple[str, str], ...]]:
    site = Site.model_construct(spaces=spaces)
    sheet = Sheet((-0.1, -0.1, width_m, 9.0), 100, 9.0)
    board = Board(sheet.bounds, mm_per_unit=10.0, solid=NOTHING, soft=NOTHING, clear=clear)
    recorder = Recorder()
    numbered = draw_names(recorder, site, storey_id="g", board=board, sheet=sheet)
    return [verb for _, verb in recorder.recording().strokes if isinstance(verb, Text)], numbered


def test_a_space_is_named_with_its_area() -> None:
    texts, numbered = _named(_space("Living room", 4.0, 3.0))
    assert [verb.text for verb in texts] == ["Living room", "12.0 m\u00b2"]
    assert numbered == ()


def test_a_code_is_dropped_where_the_name_is_plain_without_it() -> None:
    site = Site.model_construct(
        spaces=(
            _space("Kitchen (A103)", 1, 1, id="a"),
            _space("Bedroom (A201)", 1, 1, id="b"),
            _space("Bedroom (A202)", 1, 1, id="c"),
            _space("Kitchen (B103)", 1, 1, id="d", belongs="neighbour"),
        )
    )
    assert short_names(site) == {"a": "Kitchen", "b": "Bedroom (A201)", "c": "Bedroom (A202)"}


def test_a_name_too_wide_for_its_space_is_folded_then_turned_then_numbered() -> None:
    folded, _ = _named(_space("Larder passage", 1.4, 5.0))
    assert [verb.text for verb in folded][:2] == ["Larder", "passage"]
    turned, _ = _named(_space("Wintergarten", 0.8, 5.0))
    assert [(verb.text, verb.turn_deg) for verb in turned] == [("Wintergarten", 90.0)]
    small, numbered = _named(_space("Wintergarten", 0.8, 0.8))
    assert [verb.text for verb in small] == ["1"]
    assert numbered == (("1", "Wintergarten"),)


def test_no_name_is_cut_or_smaller_than_six_points() -> None:
    for wide in (0.5, 0.9, 1.3, 1.9, 2.6, 4.0):
        texts, numbered = _named(_space("Back bedroom", wide, 2.0))
        shown = " ".join(verb.text for verb in texts)
        assert shown.startswith("Back bedroom") or numbered == (("1", "Back bedroom"),)
        assert all(INKS[verb.style].size_mm >= 2.12 for verb in texts)


def test_a_name_keeps_off_what_is_to_stay_clear() -> None:
    texts, _ = _named(_space("Hall", 4.0, 4.0), clear=shapely.box(1.0, 1.0, 3.0, 4.0))
    assert not shapely.box(1.0, 1.0, 3.0, 4.0).contains(shapely.Point(texts[0].at))


def test_a_neighbours_rooms_have_no_names() -> None:
    theirs = (
        _space("Their bedroom", 3.0, 3.0, id="a", belongs="neighbour"),
        _space("Their hall", 2.0, 2.0, id="b", belongs="neighbour"),
    )
    texts, _ = _named(*theirs)
    assert [verb.text for verb in texts] == ["neighbour\u2019s"]


def test_a_narrow_sheet_leaves_out_areas_and_names_too_long() -> None:
    texts, numbered = _named(_space("Hall", 3.0, 3.0), width_m=3.2)
    assert [verb.text for verb in texts] == ["Hall"]
    assert numbered == ()
    texts, numbered = _named(_space("Wintergarten", 0.8, 0.8), width_m=3.2)
    assert texts == []
    assert numbered == ()
