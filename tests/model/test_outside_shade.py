"""What shades a house from outside."""

from __future__ import annotations

import numpy as np

from wardwright.model.outside_shade import outside_shade
from wardwright.model.site import Site
from wardwright.model.surroundings import GroundThing
from wardwright.store.samples import read_sample


def with_thing(**facts: object) -> Site:
    site = read_sample("terrace")
    thing = GroundThing.model_validate({"id": "t", "name": "T", "height_m": 3.0, **facts})
    return site.model_copy(update={"ground": site.ground.model_copy(update={"things": (thing,)})}).bare


def test_the_other_storey_and_its_floor_shade_and_the_own_does_not() -> None:
    bare = read_sample("terrace").bare
    levels = outside_shade(bare, "ground").panels[:, 4:]
    assert (levels.min(), levels.max()) == (-0.15, 5.1)
    assert 2.5 in levels[:, 0].round(6)
    assert 0.0 in outside_shade(bare, "first").panels[:, 4]


def test_what_hangs_has_an_underside() -> None:
    square = ((0.0, -2.0), (1.0, -2.0), (1.0, -1.0), (0.0, -1.0))
    panels = outside_shade(with_thing(kind="overhang", outline_m=square, base_m=2.5), "ground").panels
    assert np.isclose(panels[:, 4:], [2.35, 2.85]).all(axis=1).sum() == 4


def test_a_bent_outline_is_filled_and_leaves_hide_nothing() -> None:
    bent = ((0.0, -4.0), (3.0, -4.0), (3.0, -1.0), (2.0, -1.0), (2.0, -3.0), (0.0, -3.0))
    wall = outside_shade(with_thing(kind="wall", outline_m=bent), "ground")
    tree = outside_shade(with_thing(kind="tree", outline_m=bent), "ground")
    line = outside_shade(with_thing(kind="fence", outline_m=((0.0, -4.0), (3.0, -4.0))), "ground")
    assert len(wall.panels) - len(tree.panels) == 3 * 4
    assert len(line.panels) - len(tree.panels) == 4
