"""GLS103: a pane too small, or of a glass, that its glass-break detector is not stated for."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device_sheets import DeviceSheet, GlassBreakSheet
from wardwright.model.opening import Opening
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.heard_panes import shorter_side_m
from wardwright.rules.panes_in_earshot import Ear, ears, hears, panes_of
from wardwright.rules.registry import exactly, rule


@rule(
    code="GLS103",
    name="pane-not-of-a-kind-it-knows",
    since="0.1",
    stage="trial use",
    mark="derived",  # the limit is the device's own sheet
    severity="must mend",
    sources=(),
)
def pane_not_of_a_kind_it_knows(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Panes in earshot of a glass-break detector whose sheet is not stated for such glass.

    What it checks
        For each pane that a glass-break detector of the room hears: its shorter side, one leaf's share of the width,
        against the smallest pane on the detector's sheet, and its glass against the kinds that the sheet names.
    Why it matters
        Each glass breaks with a sound of its own: a small pane is too faint, laminated and wired glass only crack.
        A detector that is not stated for it may never ring.
    How to put it right
        Use a detector that is stated for it, or a shock detector on the frame. The finding names a sheet of the
        catalogue that knows the pane and reaches as far.
    What it cannot know
        Glazing bars that make small panes of a large one; film put on later; what glass is behind the trade name. Ask
        for the stamp in the pane's corner.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each pane that no detector which hears it knows, with its shorter side [m] where that is what fails;
        one of severity `not run` for each detector whose sheet names no glass.

    Raises
    ------
    NotComputable
        If there is no glass-break detector.
    """
    this = pane_not_of_a_kind_it_knows
    hearing: dict[str, list[Ear]] = {}
    panes: dict[str, Opening] = {}
    for ear in ears(site, catalogue):
        if not ear.sheet.glazings:
            yield this.not_run(
                ear.device.id,
                f"{ear.device.name}: its sheet does not say which glass it is for",
                cure="Ask its maker, and add the kinds of glass to its sheet",
            )
        for pane in panes_of(site, ear.room):
            if hears(site, ear.storey, ear.point, opening=pane, sheet=ear.sheet):
                panes[pane.id] = pane
                hearing.setdefault(pane.id, []).append(ear)
    for name, listening in hearing.items():
        pane = panes[name]
        if any(_knows(ear.sheet, pane) for ear in listening):
            continue
        ear = listening[0]
        is_small = shorter_side_m(pane) < ear.sheet.least_pane_m
        better = _better(catalogue, ear, tuple(one for one in panes.values() if ear in hearing[one.id]))
        yield this.finding(
            pane.id,
            f"{pane.name}: {ear.device.name} is not stated for "
            + ("a pane as small" if is_small else f"its glass, {pane.glazing}"),
            cure="Use a glass-break detector that is stated for it"
            if better
            else "Use a shock detector on its frame: no glass-break detector of the catalogue is stated for it",
            estimate=exactly(shorter_side_m(pane), "m", pane.basis_of("width_m")) if is_small else None,
            limit=ear.sheet.least_pane_m if is_small else None,
            mends=()
            if better is None
            else (Mend(action="replace-device", subject=ear.device.id, values=(("sheet", better.id),)),),
            related=tuple(one.device.id for one in listening),
        )


def _knows(sheet: GlassBreakSheet, pane: Opening) -> bool:
    is_stated = not sheet.glazings or pane.glazing in sheet.glazings
    return is_stated and shorter_side_m(pane) >= sheet.least_pane_m


def _better(catalogue: Catalogue, ear: Ear, panes: tuple[Opening, ...]) -> DeviceSheet | None:
    """The first other sheet that names all that glass, is for panes as small, and reaches as far."""
    for row in sorted(catalogue.sheets, key=lambda one: one.cheapest_first):
        sheet = row.glass_break
        if (
            sheet is not None
            and sheet.glazings
            and sheet.reach_m >= ear.sheet.reach_m
            and sheet.curtained_reach_m >= ear.sheet.curtained_reach_m
            and all(_knows(sheet, pane) for pane in panes)
        ):
            return row
    return None
