"""Glass seen from a place, by bearing and distance."""

from __future__ import annotations

import pytest

from common.houses import one_room, two_rooms_and_hall, window
from wardwright.rules.glass_ahead import FAR_M, view_from

ROOM = one_room(openings=(window("pane", "north", 2.65, width_m=1.0),))


def test_a_pane_is_seen_where_it_is() -> None:
    view = view_from(ROOM, "ground", (2.5, 1.0))
    (pane,) = view.panes(90.0, half_deg=20.0, reach_m=12.0)
    assert pane.opening == "pane"
    # 4.15 - 1.0 = 3.15 m to the middle of the wall; the nearest looked-at place is 0.05 m beside the axis.
    assert pane.distance_m == pytest.approx((3.15**2 + 0.05**2) ** 0.5)
    assert pane.off_axis_deg == pytest.approx(0.909, abs=1e-3)
    assert view.panes(90.0, half_deg=20.0, reach_m=3.0) == ()
    assert view.panes(270.0, half_deg=20.0, reach_m=12.0) == ()


def test_headings_are_the_same_a_full_turn_on() -> None:
    view = view_from(ROOM, "ground", (2.5, 1.0))
    assert view.panes(450.0, half_deg=20.0, reach_m=12.0) == view.panes(90.0, half_deg=20.0, reach_m=12.0)


def test_free_length_ends_at_walls() -> None:
    view = view_from(ROOM, "ground", (2.5, 1.0))
    assert view.free_length(0.0) == pytest.approx(2.5)
    assert view.free_length(270.0) == pytest.approx(1.0)
    # Through the pane, which is no wall, nothing is drawn any more.
    assert view.free_length(90.0) == FAR_M


def test_walls_hide_glass() -> None:
    plan = two_rooms_and_hall()
    assert set(view_from(plan, "ground", (5.1, 3.0)).openings) == set()
    assert set(view_from(plan, "ground", (8.0, 3.0)).openings) == {"study-window"}
