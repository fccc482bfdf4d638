"""GLS101: a pane that the glass-break detector of its room does not reach, or cannot hear in plain sight."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.opening import Opening
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.panes_in_earshot import (
    Ear,
    ears,
    farthest_m,
    hears,
    is_in_sight,
    moved_to_hear,
    panes_of,
)
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.suggestion import suggestions


@rule(
    code="GLS101",
    name="pane-beyond-reach-of-its-glass-break-detector",
    since="0.1",
    stage="trial use",
    mark="derived",  # the limit is the device's own sheet
    severity="must mend",
    sources=(),
)
def pane_beyond_reach_of_its_glass_break_detector(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Panes of a room with a glass-break detector that no detector there reaches in plain sight.

    What it checks
        For each pane to the outside in the room of a glass-break detector: the distance in space from the detector
        to the farthest corner of the pane, against the reach on its own sheet, and whether the middle of the pane is
        in plain sight, past walls, shut doors and furniture. Spaces open to each other are one room. One detector
        that hears the pane is enough.
    Why it matters
        The sound of breaking glass fades with distance and round corners. A pane out of reach breaks unheard, while
        the papers say that the room's glass is watched.
    How to put it right
        Move the detector to the place given, from which it hears all panes of the room that it has to, or add a
        second one.
    What it cannot know
        How the room swallows sound: carpets, soft furniture, a full bookcase; panes within one frame; rooflights.
        Prove it with a tester, with everything drawn and shut as it will be.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each such pane, with the distance from the nearest detector of the room to its farthest corner and
        that detector's reach [m]; one of severity `not run` for each detector in no space.

    Raises
    ------
    NotComputable
        If there is no glass-break detector.
    """
    this = pane_beyond_reach_of_its_glass_break_detector
    listening = ears(site, catalogue)
    panes: dict[str, Opening] = {}
    heard: dict[str, set[str]] = {}
    for ear in listening:
        if not ear.room:
            yield this.not_run(
                ear.device.id, f"{ear.device.name}: it is in no space", cure="Draw the space that it is in"
            )
        for pane in panes_of(site, ear.room):
            panes[pane.id] = pane
            is_heard = hears(site, ear.storey, ear.point, opening=pane, sheet=ear.sheet)
            heard.setdefault(pane.id, set()).update({ear.device.id} if is_heard else ())
    for pane in panes.values():
        if not heard[pane.id]:
            mine = [ear for ear in listening if pane in panes_of(site, ear.room)]
            ear = min(mine, key=lambda one: (farthest_m(site, one.point, pane), one.device.id))
            yield _finding(site, ear, pane, mends=_moved(site, ear, pane, panes=panes, heard=heard))


def _moved(
    site: Site, ear: Ear, pane: Opening, *, panes: dict[str, Opening], heard: dict[str, set[str]]
) -> tuple[Mend, ...]:
    """Move it where it hears this pane, every other that nothing hears, and all that it alone hears now."""
    wanted = [
        other
        for other in panes_of(site, ear.room)
        if other.id == pane.id or not heard[other.id] - {ear.device.id}
    ]
    return moved_to_hear(site, ear, tuple(panes[one.id] for one in wanted))


def _finding(site: Site, ear: Ear, pane: Opening, *, mends: tuple[Mend, ...]) -> Finding:
    distance = farthest_m(site, ear.point, pane)
    new = suggestions(site, mends)
    fault = (
        "is beyond its reach"
        if is_in_sight(site, ear.storey, ear.point, opening=pane)
        else "is not in its plain sight"
    )
    return pane_beyond_reach_of_its_glass_break_detector.finding(
        pane.id,
        f"{pane.name} {fault}: {ear.device.name}, the nearest glass-break detector of the room",
        cure=f"Move {ear.device.name} to the place given, in {new[0].label}"
        if new
        else "Add a glass-break detector for it: no place in the room hears all that this one has to",
        estimate=exactly(distance, "m", weakest(ear.device.basis_of("mount"), pane.basis_of("offset_m"))),
        limit=ear.sheet.reach_m,
        mends=mends,
        sketches=(
            Sketch(role="fault", storey=ear.storey, points=(ear.point[:2],), label=ear.device.name),
            *new,
        ),
        related=(ear.device.id,),
    )
