from __future__ import annotations

from typing import get_args

import pytest

from wardwright.intake.notes.uses import USE_WORDS, USES, likely_use
from wardwright.model.fabric import SpaceUse


@pytest.mark.parametrize(
    ("identity", "use"),
    [
        ("bedroom-1", "bedroom"),
        ("front-bedroom", "bedroom"),
        ("wc", "toilet"),
        ("under-stairs-cupboard", "store"),
    ],
)
def test_a_room_is_likely_for_what_its_name_says(identity: str, use: str) -> None:
    assert likely_use(identity) == use


def test_a_name_that_says_nothing_guesses_nothing() -> None:
    assert likely_use("den") is None
    assert likely_use("hallmark") is None


def test_uses_are_the_models() -> None:
    assert set(USES.values()) < set(get_args(SpaceUse)) == set(USE_WORDS)
