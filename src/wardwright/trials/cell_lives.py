"""How long the cells of each device last, over all that is not known for sure."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue, Figure
from wardwright.model.device import Device
from wardwright.model.record import Basis
from wardwright.model.site import Site
from wardwright.physics.power.from_site import Climate, OnCells, climate, life_of
from wardwright.physics.power.retries import sends_a_message
from wardwright.trials.draws import Cases, Input, cases_of
from wardwright.trials.household_traffic import Traffic, traffic_of

CAPACITY, LOSS, SENDS = "capacity of", "loss of", "sendings of"
USABLE, CURRENT = "usable-share", "current-share"
TRAFFIC_NAMES = {
    "outings-a-day": "outings of each person in a day",
    "walks-at-home-a-day": "walks at home in a day",
    "activations-in-a-used-room": "activations by people in its room",
    "activations-a-day": "activations in a day",
    "doors-a-day": "openings of a door in a day",
}


class Margin(NamedTuple):
    """How far a radio link's level is above what it needs: likely, low and high. [dB]"""

    value: float
    low: float
    high: float
    basis: Basis = "default"


class Lasting(NamedTuple):
    """How long one device's cells last."""

    one: OnCells
    traffic: Traffic
    cases: Cases
    years: FloatArray
    """In every row of the cases. [a]"""


def lasting(site: Site, catalogue: Catalogue, one: OnCells, *, margin: Margin | None = None) -> Lasting:
    """Work out how long a device's cells last, in every case.

    Parameters
    ----------
    site : Site
        The house and who lives there.
    catalogue : Catalogue
        Sheets, cells and figures.
    one : OnCells
        The device on its cells.
    margin : Margin, optional
        Of its radio link; left out: a stated default of sendings a message.

    Returns
    -------
    Lasting
        Its rows are the likely case, each input low and high, then the draws.
    """
    return lasting_in(catalogue, one, setting_of(site, catalogue, one.device), margin=margin)


class Setting(NamedTuple):
    """All that a device's cells hang on of the site: a keypad that moves changes it for few other devices."""

    traffic: Traffic
    where: Climate


def setting_of(site: Site, catalogue: Catalogue, device: Device) -> Setting:
    """How often a device sends, and how cold it gets where it hangs."""
    return Setting(traffic_of(site, catalogue, device), climate(site, device))


@lru_cache(maxsize=512)
def lasting_in(catalogue: Catalogue, one: OnCells, setting: Setting, *, margin: Margin | None) -> Lasting:
    """How long a device's cells last in a setting: all else as in `lasting`."""
    traffic, where = setting
    inputs = _inputs(catalogue, one, setting, margin=margin)
    cases = cases_of(inputs)
    rows = cases.rows
    messages = sum((share * rows[name] for name, share in traffic.shares), np.zeros(cases.total))
    years = life_of(
        one,
        capacity=rows[f"{CAPACITY} {one.cell.id}"],
        loss=rows[f"{LOSS} {one.cell.id}"],
        usable=rows[USABLE],
        temperature=rows[f"temperature-{where}"],
        current=rows[CURRENT],
        sends=rows[f"{SENDS} {one.device.id}"],
        messages=np.minimum(messages, traffic.most),
    )
    return Lasting(one, traffic, cases, years)


def _inputs(
    catalogue: Catalogue, one: OnCells, setting: Setting, *, margin: Margin | None
) -> tuple[Input, ...]:
    traffic, where = setting
    known: Basis = "told"
    figures = [
        Input(f"{CAPACITY} {one.cell.id}", "what the cell holds", capacity_of(one), known),
        Input(f"{LOSS} {one.cell.id}", "what the cell loses by itself", _loss_of(one), known),
        Input(USABLE, "share of the cell that can be used", catalogue.figure(USABLE), "default"),
        Input(CURRENT, "what the device draws", catalogue.figure(CURRENT), "default"),
        Input(
            f"temperature-{where}",
            "temperature of the cell",
            catalogue.figure(f"temperature-{where}"),
            "default",
        ),
        _sends(catalogue, one.device, margin=margin),
    ]
    figures += [
        Input(name, TRAFFIC_NAMES[name], catalogue.figure(name), "default") for name, _ in traffic.shares
    ]
    return tuple(figures)


@lru_cache(maxsize=256)
def capacity_of(one: OnCells) -> Figure:
    """What one of its cells holds: the low end less where it is drawn from hard. [Ah]"""
    cell = one.cell
    value = cell.capacity_mah or 0.0
    low, high = cell.capacity_low_mah or value, cell.capacity_high_mah or value
    hard, left = cell.hard_pulse_ma, cell.hard_capacity_mah
    if hard is not None and left is not None and one.cells.pulse_ma > hard:
        low = min(low, left)
    return _figure("capacity", value * 1e-3, low * 1e-3, high * 1e-3, unit="Ah", row=one)


@lru_cache(maxsize=256)
def _loss_of(one: OnCells) -> Figure:
    cell = one.cell
    return _figure("loss", cell.loss_share, cell.loss_low_share, cell.loss_high_share, unit="a-1", row=one)


def _sends(catalogue: Catalogue, device: Device, *, margin: Margin | None) -> Input:
    key, name = f"{SENDS} {device.id}", "sendings until a message is heard"
    if margin is None:
        return Input(key, name, catalogue.figure("sends-a-message"), "default")
    value, low, high = sends_a_message([margin.value, margin.high, margin.low]).tolist()
    figure = Figure(
        id="sends", name=name, value=value, low=min(low, value), high=max(high, value), unit="-", source="own",
        mark="derived",
    )  # fmt: skip
    return Input(key, name, figure, margin.basis)


def _figure(name: str, value: float, low: float, high: float, *, unit: str, row: OnCells) -> Figure:  # noqa: PLR0917 - a figure
    return Figure(
        id=name,
        name=name,
        value=value,
        low=low,
        high=high,
        unit=unit,
        source=row.cell.source,
        mark=row.cell.mark,
    )
