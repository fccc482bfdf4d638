from __future__ import annotations

import pytest

from wardwright.intake.dxf.file import Swing
from wardwright.intake.dxf.gaps import Gap
from wardwright.intake.dxf.openings import DOOR_HEAD_M, leaf_of
from wardwright.intake.dxf.texts import size_in
from wardwright.intake.dxf.walls import Run, Way

RUN = Run(Way(1.0, 0.0), -0.05, 0.05, 0.0, 2.0)


def gap(
    width: float = 0.762, *, size: str = "", lines: tuple[tuple[float, float], ...] = (), **facts: object
) -> Gap:
    made = Gap(RUN, 2.0, 2.0 + width, [], size=size_in(size) if size else None, lines=lines)
    for name, value in facts.items():
        setattr(made, name, value)
    return made


@pytest.mark.parametrize(("hinge_x", "hinge"), [(2.0, "start"), (2.762, "end")])
@pytest.mark.parametrize(("tip_y", "swing"), [(0.8, "left"), (-0.8, "right")])
def test_a_door_turns_as_its_arc_shows(hinge_x: float, hinge: str, tip_y: float, swing: str) -> None:
    shut = (2.762 if hinge == "start" else 2.0, 0.0)
    arc = Swing((hinge_x, 0.0), 0.762, ((hinge_x, tip_y), shut))
    leaf = leaf_of(gap(swings=[arc]), storey_m=2.4)
    assert (leaf.fields["kind"], leaf.fields["hinge"], leaf.fields["swing"]) == ("door", hinge, swing)
    assert {"hinge", "swing"}.isdisjoint(leaf.guessed)
    assert "head_m" in leaf.guessed


def test_a_written_height_is_not_guessed() -> None:
    leaf = leaf_of(gap(size="2680", lines=((2.0, 2.4),)), storey_m=2.6)
    assert leaf.fields["head_m"] == pytest.approx(8 * 0.3048, abs=1e-3)
    assert "head_m" not in leaf.guessed
    assert "lock" in leaf.guessed


@pytest.mark.parametrize(
    ("size", "kind", "hinge"),
    [
        ("5050 XO", "window", "sliding"),
        ("2050 SH", "window", "sliding"),
        ("3040 FIXED", "window", "fixed"),
        ("1660", "window", "fixed"),
        ("6068 S.G.D.", "door", "sliding"),
        ("16070 O.H. DOOR", "garage-door", "top"),
    ],
)
def test_the_letters_of_a_size_say_the_kind(size: str, kind: str, hinge: str) -> None:
    written = size_in(size)
    assert written is not None
    leaf = leaf_of(gap(written.width_m, size=size, is_drawn=True), storey_m=2.4)
    assert (leaf.fields["kind"], leaf.fields["hinge"]) == (kind, hinge)
    assert leaf.fields["head_m"] - leaf.fields["sill_m"] == pytest.approx(written.height_m, abs=2e-3)
    assert (leaf.fields.get("glazing") is not None) == (kind == "window")


def test_a_pane_spans_its_gap_and_a_sliding_leaf_does_not() -> None:
    pane = leaf_of(gap(1.2, lines=((2.0, 3.2),), is_drawn=True), storey_m=2.4)
    slid = leaf_of(gap(1.8, lines=((2.0, 2.9), (2.9, 3.8)), is_drawn=True), storey_m=2.4)
    assert (pane.fields["kind"], slid.fields["kind"], slid.fields["leaves"]) == ("window", "door", 2)
    assert {"sill_m", "head_m", "glazing"} <= set(pane.guessed)


def test_jambs_alone_are_an_opening_without_a_leaf() -> None:
    leaf = leaf_of(gap(is_drawn=True), storey_m=2.4)
    assert (leaf.fields["kind"], leaf.fields["head_m"]) == ("gap", DOOR_HEAD_M)
    assert {"kind", "head_m"} <= set(leaf.guessed)


def test_a_passage_is_as_high_as_the_room() -> None:
    leaf = leaf_of(gap(1.0), storey_m=2.44)
    assert (leaf.fields["kind"], leaf.fields["head_m"]) == ("gap", 2.44)
