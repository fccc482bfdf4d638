"""Streams of chance: by key and seed alone."""

from __future__ import annotations

import numpy as np

from common.houses import CATALOGUE
from wardwright.trials.campaign.streams import LEAST_SHARE, Streams


def test_a_key_hangs_on_no_other() -> None:
    alone, among = Streams(1), Streams(1)
    among.even("other", 10)
    assert np.array_equal(alone.even("a", 5), among.even("a", 5))
    assert not np.array_equal(Streams(1).even("a", 5), Streams(1).even("b", 5))
    assert not np.array_equal(Streams(1).even("a", 5), Streams(2).even("a", 5))


def test_a_stream_goes_on_where_it_was_left() -> None:
    whole, parts = Streams(1).even("a", 6), Streams(1)
    assert np.array_equal(whole, np.concatenate([parts.even("a", 2), parts.even("a", 4)]))


def test_no_draw_falls_far_below_its_figure() -> None:
    """A pace or a time stays above zero, however long one draws."""
    figure = CATALOGUE.figure("break-glass")
    assert Streams(1).of("x", figure, 200_000).min() >= LEAST_SHARE * figure.low > 0.0
