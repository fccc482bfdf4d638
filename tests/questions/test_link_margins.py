"""Margins of links, for the lives of cells."""

from __future__ import annotations

from common.houses import CATALOGUE, one_room
from wardwright.questions.link_margins import link_margins


def test_no_device_no_margin() -> None:
    assert link_margins(one_room(), CATALOGUE) == {}
