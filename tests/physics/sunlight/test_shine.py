"""What the sun shines on."""

from __future__ import annotations

from wardwright.physics.sunlight.shine import Lens, norths_in


def test_a_lens_is_its_storey_and_a_place_that_lines_start_from() -> None:
    assert Lens("ground", 1.0, 2.0, 3.0)[1:] == (1.0, 2.0, 3.0)


def test_one_north_is_a_range_of_one() -> None:
    assert norths_in(0.3) == (0.3,)
    assert norths_in((0.1, 0.2)) == (0.1, 0.2)
