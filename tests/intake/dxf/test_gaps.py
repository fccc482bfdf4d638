from __future__ import annotations

import io

import pytest

from common.dxf_plan import GAPS, Wish, written
from wardwright.intake.dxf.file import opened
from wardwright.intake.dxf.gaps import Gap, Signs, gaps_of
from wardwright.intake.dxf.texts import Text
from wardwright.intake.dxf.walls import runs_of, with_corners


def found(wish: Wish) -> tuple[list[Gap], list[Text]]:
    drawing = opened(io.BytesIO(written(wish)), where="t.dxf")
    runs, corners = with_corners(runs_of(drawing.faces), drawing.faces)
    return gaps_of(runs, corners, Signs(drawing.leaves, drawing.swings, drawing.texts))


METRES = {"unit": "m", "header": "m"}


def test_each_opening_is_a_gap_with_its_size() -> None:
    gaps, loose = found(Wish(**METRES))  # type: ignore[arg-type]
    openings = [gap for gap in gaps if gap.is_opening]
    drawn = [gap for gap in GAPS if gap.drawn]
    assert len(openings) == len(drawn)
    assert sorted(gap.width for gap in openings) == pytest.approx(
        sorted(max(g.box[2] - g.box[0], g.box[3] - g.box[1]) for g in drawn), abs=1e-3
    )
    assert all(gap.size is not None and abs(gap.size.width_m - gap.width) < 0.01 for gap in openings)
    assert sum(bool(gap.swings) for gap in openings) == 3
    assert loose == []


def test_where_nothing_is_drawn_there_is_a_passage() -> None:
    gaps, _ = found(Wish(**METRES))  # type: ignore[arg-type]
    passages = [gap for gap in gaps if not gap.is_opening]
    assert [round(gap.width, 3) for gap in passages] == [1.0]


def test_without_sizes_swings_and_lines_show_the_openings() -> None:
    gaps, _ = found(Wish(**METRES, with_sizes=False))  # type: ignore[arg-type]
    assert sum(gap.is_opening for gap in gaps) == sum(bool(gap.drawn) for gap in GAPS)


def test_a_size_beside_no_gap_is_left_over() -> None:
    stray = (*Wish().names, ("2868", 2.0, 1.0, ""))
    _, loose = found(Wish(**METRES, names=stray))  # type: ignore[arg-type]
    assert [text.words for text in loose] == ["2868"]
