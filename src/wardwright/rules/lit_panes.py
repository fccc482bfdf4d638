"""What rules about sun say of a pane: the line to it from what it disturbs, and the blind that would help."""

from __future__ import annotations

from collections.abc import Iterable

from wardwright.model.opening import Opening
from wardwright.model.placement import Standing, along
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.finding import Mend


def line_to_pane(site: Site, place: Standing, opening: Opening) -> Sketch:
    """The line from a device to the middle of a pane, with the pane's name."""
    pane = along(site.wall(opening.wall).line_m, opening.offset_m)
    return Sketch(
        role="fault", storey=place.storey, points=((place.x_m, place.y_m), pane), label=opening.name
    )


def blinds_on(panes: Iterable[str]) -> tuple[Mend, ...]:
    """A blind on each of some panes, by their ids."""
    return tuple(
        Mend(action="change-covering", subject=pane, values=(("covering", "blind"),)) for pane in panes
    )
