"""How long a device's cells last on ordinary days: by stated defaults, whoever lives there."""

from __future__ import annotations

import math

import numpy as np

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import DeviceKind
from wardwright.model.estimate import Driver, Estimate
from wardwright.model.site import Site
from wardwright.physics.power.from_site import OnCells, climate, life_of

SIGNALS: dict[DeviceKind, tuple[str, float]] = {
    "movement-detector": ("activations-a-day", 1.0),
    # It tells that its leaf opens, and that it shuts.
    "opening-contact": ("doors-a-day", 2.0),
}
"""The figure that says how often a kind of device is set off, and how many messages each time."""


def cells_end(site: Site, catalogue: Catalogue, one: OnCells) -> Estimate | None:
    """How long a device's cells last.

    Parameters
    ----------
    site : Site
        Where it hangs.
    catalogue : Catalogue
        Cells and figures.
    one : OnCells
        The device on its cells.

    Returns
    -------
    Estimate or None
        Low and high as far off as all inputs are together, each apart by itself; None where the cell's row does not
        say what it holds. [a]
    """
    cell = one.cell
    if cell.capacity_mah is None:
        return None
    figure, per = SIGNALS.get(one.sheet.kind, ("activations-a-day", 0.0))
    known = {
        "capacity": (
            cell.capacity_mah, cell.capacity_low_mah or cell.capacity_mah, cell.capacity_high_mah or cell.capacity_mah
        ),
        "loss": (cell.loss_share, cell.loss_low_share, cell.loss_high_share),
        "usable": _three(catalogue, "usable-share"),
        "temperature": _three(catalogue, f"temperature-{climate(site, one.device)}"),
        "current": _three(catalogue, "current-share"),
        "sends": _three(catalogue, "sends-a-message"),
        "messages": _three(catalogue, figure),
    }  # fmt: skip
    # The likely case, then each input at its low and its high end.
    rows = {name: np.full(1 + 2 * len(known), three[0]) for name, three in known.items()}
    for i, (name, three) in enumerate(known.items()):
        rows[name][1 + 2 * i], rows[name][2 + 2 * i] = three[1], three[2]
    rows["capacity"] *= 1e-3
    rows["messages"] *= per
    years = life_of(one, **rows)
    likely = float(years[0])
    shorter, longer = 0.0, 0.0
    drivers = []
    for i, name in enumerate(known):
        a, b = float(years[1 + 2 * i]), float(years[2 + 2 * i])
        shorter += math.log(likely / min(a, b, likely)) ** 2
        longer += math.log(max(a, b, likely) / likely) ** 2
        drivers.append(Driver(name=NAMES[name], swing=abs(b - a), basis="default"))
    drivers.sort(key=lambda driver: (-driver.swing, driver.name))
    return Estimate(
        value=likely,
        low=likely * math.exp(-math.sqrt(shorter)),
        high=likely * math.exp(math.sqrt(longer)),
        unit="a",
        drivers=tuple(driver for driver in drivers if driver.swing > 1e-9),
        basis="default",
    )


NAMES = {
    "capacity": "what the cell holds",
    "loss": "what the cell loses by itself",
    "usable": "share of the cell that can be used",
    "temperature": "temperature of the cell",
    "current": "what the device draws",
    "sends": "sendings until a message is heard",
    "messages": "how often it is set off",
}


def _three(catalogue: Catalogue, name: str) -> tuple[float, float, float]:
    one = catalogue.figure(name)
    return one.value, one.low, one.high
