"""GLS102: a pane behind a curtain, blind or shutter, farther than a glass-break detector hears through it."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.opening import Opening
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.panes_in_earshot import Ear, ears, farthest_m, hears, moved_to_hear, panes_of
from wardwright.rules.registry import exactly, rule, weakest
from wardwright.rules.suggestion import suggestions


@rule(
    code="GLS102",
    name="pane-behind-curtain-too-far",
    since="0.1",
    stage="trial use",
    mark="derived",  # the limit is the device's own sheet
    severity="must mend",
    sources=(),
)
def pane_behind_curtain_too_far(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Panes with a curtain, blind or shutter that no glass-break detector hears through it.

    What it checks
        For each pane with a covering that a glass-break detector of the room would hear bare: the distance to
        its farthest corner against the reach through heavy curtains on the detector's own sheet. A sheet that is
        silent does not hear through them.
    Why it matters
        Heavy curtains and shutters take away the high sounds of breaking glass, which the detector goes by. They are
        drawn at night, when the house is set with people asleep.
    How to put it right
        Move the detector near the pane, or behind the curtain where its sheet allows that; otherwise use a shock
        detector on the frame.
    What it cannot know
        How heavy the curtain is, and whether it is ever drawn; a pelmet that leaves sound a way round.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each such pane, with the distance to its farthest corner and the reach through curtains [m]; one of
        severity `not run` that names the panes of which nobody told the covering.

    Raises
    ------
    NotComputable
        If there is no glass-break detector.
    """
    this = pane_behind_curtain_too_far
    listening = ears(site, catalogue)
    bare: dict[str, list[Ear]] = {}
    panes: dict[str, Opening] = {}
    for ear in listening:
        for pane in panes_of(site, ear.room):
            if hears(site, ear.storey, ear.point, opening=pane, sheet=ear.sheet):
                panes[pane.id] = pane
                bare.setdefault(pane.id, []).append(ear)
    untold = sorted(pane.name for pane in panes.values() if pane.basis_of("covering") == "default")
    if untold:
        yield this.not_run(
            site.name,
            f"Nobody told whether {' or '.join(untold)} has a curtain, blind or shutter",
            cure="Tell the covering of each pane, or that it has none",
            mends=tuple(
                Mend(action="tell", subject=pane.id, values=(("field", "covering"),))
                for pane in panes.values()
                if pane.basis_of("covering") == "default"
            ),
        )
    for pane in panes.values():
        if pane.covering == "none" or any(_is_heard_through(site, ear, pane) for ear in bare[pane.id]):
            continue
        ear = min(bare[pane.id], key=lambda one: (farthest_m(site, one.point, pane), one.device.id))
        wanted = tuple(other for other in panes.values() if other is pane or bare[other.id] == [ear])
        mends = moved_to_hear(site, ear, wanted, heed=True)
        new = suggestions(site, mends)
        yield this.finding(
            pane.id,
            f"{pane.name} has a {pane.covering}, and {ear.device.name} is too far away to hear through it",
            cure=f"Move {ear.device.name} to the place given, in {new[0].label}"
            if new
            else "Use a shock detector on its frame: no place in the room hears all panes through their coverings",
            estimate=exactly(
                farthest_m(site, ear.point, pane),
                "m",
                weakest(ear.device.basis_of("mount"), pane.basis_of("covering")),
            ),
            limit=ear.sheet.curtained_reach_m,
            mends=mends,
            sketches=(
                Sketch(role="fault", storey=ear.storey, points=(ear.point[:2],), label=ear.device.name),
                *new,
            ),
            related=(ear.device.id,),
        )


def _is_heard_through(site: Site, ear: Ear, pane: Opening) -> bool:
    return hears(site, ear.storey, ear.point, opening=pane, sheet=ear.sheet, is_curtained=True)
