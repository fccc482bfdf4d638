"""One trip as it was played."""

from __future__ import annotations

import math

import pytest

from wardwright.trials.trip_played import HouseholdTrip, Kind


@pytest.mark.parametrize(
    ("kind", "is_ordinary"),
    [
        ("arrival", True), ("leaving", True), ("night", True), ("morning", True), ("stay", True), ("unset", True),
        ("wrong turn", False), ("forgotten code", False),
    ],
)  # fmt: skip
def test_what_is_ordinary(kind: Kind, is_ordinary: bool) -> None:
    one = HouseholdTrip("ann", kind, "night", "kitchen", "usual", math.inf, None, None, None)
    assert one.is_ordinary is is_ordinary
    assert not one.rings
    assert one._replace(device="hall-movement", second=3.0).rings
