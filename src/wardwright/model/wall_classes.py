"""What a wall or an opening counts as to radio: the row of the catalogue's wall losses, and the layers as drawn."""

from __future__ import annotations

import math
from collections.abc import Mapping

from wardwright.model.catalogue import Catalogue, Construction
from wardwright.model.fabric import Wall
from wardwright.model.opening import Opening

HEAVIEST_FIRST = ("metal", "coated", "concrete", "masonry", "timber", "light", "glass")
"""A wall counts as the heaviest of its layers."""
THICKER = 1.3
"""A wall of one solid layer that is drawn so much thicker than its build is as thick as drawn. [-] (assumption)"""
NOT_SOLID = ("air", "insulation")
"""A build with one of these is as thick as its row says, however it is drawn."""

Layers = tuple[tuple[str, float], ...]
"""Materials and thicknesses. [m]"""


def class_of_wall(made: Construction | None, classes: Mapping[str, str]) -> str:
    """What a wall counts as: the heaviest of its layers; `unknown` where none is known."""
    found = {classes.get(name, "none") for name, _ in made.layers} if made is not None else set()
    return next((one for one in HEAVIEST_FIRST if one in found), "unknown")


def class_of_opening(catalogue: Catalogue, opening: Opening) -> str:
    """What an opening counts as when it is shut; empty for a gap, which takes nothing."""
    if opening.kind == "gap":
        return ""
    if opening.glazing is not None:
        coated = {row.id for row in catalogue.glazings if row.is_coated}
        return "coated" if opening.glazing in coated else "glass"
    if opening.kind == "garage-door":
        return "garage-leaf"
    return "unknown-glass" if opening.kind in ("window", "rooflight") else "leaf"


def layers_as_drawn(made: Construction | None, wall: Wall) -> Layers:
    """The layers of a wall; one that is solid is as thick as it is drawn. Empty where its make is not known."""
    if made is None or not made.layers:
        return ()
    total = math.fsum(thick for _, thick in made.layers)
    is_solid = all(name not in NOT_SOLID for name, _ in made.layers)
    if not is_solid or wall.thickness_m <= THICKER * total:
        return made.layers
    main = max(range(len(made.layers)), key=lambda i: made.layers[i][1])
    more = wall.thickness_m - total
    return tuple((name, thick + (more if i == main else 0.0)) for i, (name, thick) in enumerate(made.layers))
