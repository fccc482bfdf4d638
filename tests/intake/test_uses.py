from __future__ import annotations

import pytest

from wardwright.intake.uses import use_of


@pytest.mark.parametrize(
    ("name", "use"),
    [
        ("Flur", "hall"),
        ("Bad", "bathroom"),
        ("Küche", "kitchen"),
        ("Kueche", "kitchen"),
        ("Wohnen", "living"),
        ("Schlafzimmer", "bedroom"),
        ("Buero", "study"),
        ("Galerie", "loft"),
        ("Living Room", "living"),
        ("Stair / Hallway", "stairwell"),
        ("Bathroom 2", "bathroom"),
        ("Utility", "utility"),
        ("Foyer", "hall"),
        ("Room", "other"),
        ("Zimmer 4", "other"),
        ("GREAT ROOM", "living"),
        ("UTIL.", "utility"),
        ("W.I.C.", "store"),
        ("WC", "toilet"),
        ("TOIL.", "toilet"),
        ("Pantry", "store"),
        ("2 CAR GARAGE", "garage"),
    ],
)
def test_uses_in_two_languages(name: str, use: str) -> None:
    assert use_of(name) == use
