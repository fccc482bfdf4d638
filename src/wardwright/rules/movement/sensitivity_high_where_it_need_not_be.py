"""MOV108: a movement detector set to high sensitivity in a space that it reaches without."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.ahead import ahead_of
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import movement_detectors
from wardwright.rules.registry import exactly, rule, weakest


@rule(
    code="MOV108",
    name="sensitivity-high-where-it-need-not-be",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def sensitivity_high_where_it_need_not_be(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Movement detectors set to high sensitivity though all that they see of their space is within their reach.

    What it checks
        For each movement detector that is set to high, how far the farthest floor of its own space is that lies in
        its fan and in plain sight, against the reach on its sheet, which is stated for the usual setting.
    Why it matters
        High notices nobody sooner in a space that it reaches anyway. What it adds is the curtain in a draught, the
        cat, the warm air over a radiator: false alarms, and a cell that empties early.
    How to put it right
        Set it to usual, and walk it again: the far end, and slowly along its edge.
    What it cannot know
        A warm room, in which people stand out less, or a detector known to be weak: there the walk test may want
        high, and the reason belongs in the notes.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each such detector, with the farthest place that it sees in its space, and its reach [m].

    Raises
    ------
    NotComputable
        If there is no movement detector.
    """
    this = sensitivity_high_where_it_need_not_be
    for device, sheet in movement_detectors(site, catalogue):
        if device.sensitivity != "high":
            continue
        ahead = ahead_of(site, device, sheet)
        floor = ahead.own_floor()
        if ahead.space is None or len(floor) == 0:
            yield this.not_run(
                device.id,
                f"{device.name}: no floor of a space of its own is in its sight",
                cure="Draw that space",
            )
            continue
        farthest = float(ahead.distance(floor).max())
        if farthest > sheet.reach_m:
            continue
        place = standing(site, device)
        yield this.finding(
            device.id,
            f"{device.name}: it is set to high, and reaches all that it sees of {ahead.space.name} without",
            cure="Set it to usual, and walk it again",
            estimate=exactly(
                farthest, "m", weakest(device.basis_of("mount"), ahead.space.basis_of("outline_m"))
            ),
            limit=sheet.reach_m,
            mends=(Mend(action="change-device", subject=device.id, values=(("sensitivity", "usual"),)),),
            sketches=(
                Sketch(
                    role="fault", storey=place.storey, points=((place.x_m, place.y_m),), label=device.name
                ),
            ),
            related=(ahead.space.id,),
        )
