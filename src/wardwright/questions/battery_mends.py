"""What would let a battery last longer: other cells that the sheet takes, and a longer check-in."""

from __future__ import annotations

from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.physics.power.from_site import OnCells
from wardwright.rules.finding import Mend
from wardwright.trials.cell_lives import Margin, lasting
from wardwright.trials.draws import estimate_of

WORTH = 1.05
"""A mend is named if it lets a battery last at least so many times as long. [-] (assumption)"""


def cell_mends(
    site: Site, catalogue: Catalogue, one: OnCells, *, now: Estimate, margin: Margin | None = None
) -> tuple[Mend, ...]:
    """Cures for one device, the one that brings most first.

    Parameters
    ----------
    site : Site
        The house, who lives there, and the grade that is aimed at.
    catalogue : Catalogue
        Sheets, cells and limits.
    one : OnCells
        The device on its cells.
    now : Estimate
        How long they last as it is. [a]
    margin : Margin, optional
        Of its radio link.

    Returns
    -------
    tuple of Mend
        Each worked out on the model.
    """
    tried: list[Mend] = []
    device = one.device
    for name in one.cells.also_takes:
        if name != one.cell.id:
            other = one._replace(cell=catalogue.cell(name), device=device.model_copy(update={"cell": name}))
            tried += _worth(site, catalogue, other, now=now, margin=margin, values=(("cell", name),))
    longest = _longest_check_in(site, catalogue, one)
    if longest is not None and one.check_in_min is not None and longest > one.check_in_min:
        other = one._replace(device=device.model_copy(update={"check_in_min": longest}))
        tried += _worth(site, catalogue, other, now=now, margin=margin, values=(("check_in_min", longest),))
    return tuple(sorted(tried, key=lambda mend: (-(mend.gain.value if mend.gain else 0.0), mend.values)))


def _longest_check_in(site: Site, catalogue: Catalogue, one: OnCells) -> float | None:
    """The longest time between check-ins that the sheet, the programme and the grade let. [min]"""
    limits = [one.cells.check_in_most_min, site.programme.check_in_min]
    if limits[0] is None:
        return None
    grade = site.needs.grade
    if grade is not None and site.needs.check_in_by_grade:
        rows = catalogue.limits_in(f"check-in-grade-{grade}", site.place.rule_pack)
        limits += [rows[0].value] if rows else []
    return min(limit for limit in limits if limit is not None)


def _worth(
    site: Site,
    catalogue: Catalogue,
    other: OnCells,
    *,
    now: Estimate,
    margin: Margin | None,
    values: tuple[tuple[str, str | float | int | bool], ...],
) -> list[Mend]:
    after = lasting(site, catalogue, other, margin=margin)
    estimate = estimate_of(after.years, after.cases, unit="a")
    if estimate.value < now.value * WORTH:
        return []
    return [Mend(action="change-device", subject=other.device.id, values=values, gain=estimate)]
