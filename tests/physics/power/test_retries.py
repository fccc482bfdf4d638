"""Sendings of one message by the margin of its link."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from wardwright.physics.power.retries import sends_a_message


@given(st.floats(-60.0, 60.0), st.floats(0.0, 40.0))
def test_a_better_margin_never_sends_more(margin: float, better: float) -> None:
    assert sends_a_message(margin + better) <= sends_a_message(margin)


@pytest.mark.parametrize(("margin", "sends"), [(-math.inf, 8.0), (math.inf, 1.0)])
def test_the_ends(margin: float, sends: float) -> None:
    assert float(sends_a_message(margin)) == sends


def test_what_is_not_known_stays_unknown() -> None:
    assert np.isnan(sends_a_message(math.nan))


def test_against_sendings_that_are_played() -> None:
    """At a margin of 2 dB: sent until heard, 200 000 times."""
    draw = np.random.default_rng(11)
    levels = draw.normal(2.0, 4.0, size=(200_000, 8))
    lost = (levels < 0.0).cumprod(axis=1)
    sends = 1.0 + lost[:, :-1].sum(axis=1)
    assert float(sends_a_message(2.0)) == pytest.approx(sends.mean(), rel=0.01)
