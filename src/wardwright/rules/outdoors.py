"""Which openings have the open air on one side."""

from __future__ import annotations

from typing import Literal

from wardwright.model.opening import Opening
from wardwright.model.placement import sides_of_opening
from wardwright.model.site import Site


def outdoor_side(site: Site, opening: Opening) -> Literal["left", "right"] | None:
    """The side of an opening's wall, looking along its line, that is open air; None unless just one side is."""
    left, right = (
        space is None or site.space(space).is_outdoors for space in sides_of_opening(site, opening)
    )
    if left == right:
        return None
    return "left" if left else "right"
