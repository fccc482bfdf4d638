"""An upright opening as plain numbers."""

from __future__ import annotations

from wardwright.geometry.panes import Pane


def test_it_is_plain_numbers_that_can_be_changed_one_by_one() -> None:
    pane = Pane((0.0, 0.0), (0.0, -1.0), 1.2, 0.9, 2.1, 0.3)
    assert pane._replace(width=2.0)[2:] == (2.0, 0.9, 2.1, 0.3)
