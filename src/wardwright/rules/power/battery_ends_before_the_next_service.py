"""PWR101: cells that are likely empty before somebody comes for the next service."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.physics.power.from_site import OnCells, on_cells
from wardwright.rules.cell_ends import cells_end
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import sheets_in_use
from wardwright.rules.registry import rule
from wardwright.rules.replacement import replaced


@rule(
    code="PWR101",
    name="battery-ends-before-the-next-service",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
    follows="nothing",
)
def battery_ends_before_the_next_service(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Devices whose cells are likely empty before the next service.

    What it checks
        For each device on cells, how long they likely last: from what its sheet says that it draws, its check-ins, an
        ordinary number of activations, the cold where it hangs, and what the cell loses by itself. Held against a
        year, the usual time between services.
    Why it matters
        A cell that ends between two visits is a visit of its own, and until then a device that notices nothing.
    How to put it right
        Fit the better cells that its sheet takes, let it check in less often where its sheet and the grade let that,
        or use another device. Question 15 says how much each brings.
    What it cannot know
        How often people really pass, cells of poor make, and retries on a weak radio link.

    Parameters
    ----------
    site : Site
        The devices and where they hang.
    catalogue : Catalogue
        Sheets, cells, figures, and the time between services.

    Yields
    ------
    Finding
        One for each such device, with how long its cells last [a]. One of severity `not run` for the devices whose
        sheets are silent, together.

    Raises
    ------
    NotComputable
        If no device runs on cells.
    """
    this = battery_ends_before_the_next_service
    limit = catalogue.limit("service-interval", site.place.rule_pack).value
    used = [pair for pair in sheets_in_use(site, catalogue) if pair[1].power == "cell"]
    if not used:
        raise NotComputable("no device on cells", cure="Add the devices that are planned")
    silent = []
    for device, _ in used:
        one = on_cells(device, catalogue)
        life = None if one is None else cells_end(site, catalogue, one)
        if one is None or life is None:
            silent.append(device.name)
        elif life.value < limit:
            yield this.finding(
                device.id,
                f"{device.name}: its cells are likely empty before the next service",
                cure="Fit better cells, let it check in less often, or use another device",
                estimate=life,
                limit=limit,
                mends=_mends(site, catalogue, one, least=limit),
            )
    if silent:
        yield this.not_run(
            site.name,
            f"the sheets do not say what these draw from which cells: {', '.join(silent)}",
            cure="Add [sheet.cells] to their sheets",
        )


def _mends(site: Site, catalogue: Catalogue, one: OnCells, *, least: float) -> tuple[Mend, ...]:
    """Cells that last till the service; else another device whose cells do."""
    found = []
    for name in one.cells.also_takes:
        other = one._replace(cell=catalogue.cell(name))
        life = cells_end(site, catalogue, other)
        if name != one.cell.id and life is not None and life.value >= least:
            found.append(
                Mend(action="change-device", subject=one.device.id, values=(("cell", name),), gain=life)
            )
    if found:
        return tuple(found)

    def lasts(sheet_id: str) -> bool:
        device = one.device.model_copy(update={"sheet": sheet_id, "cell": None, "check_in_min": None})
        instead = on_cells(device, catalogue)
        life = None if instead is None else cells_end(site, catalogue, instead)
        return life is not None and life.value >= least

    return replaced(catalogue, one.device, fits=lambda sheet: lasts(sheet.id))
