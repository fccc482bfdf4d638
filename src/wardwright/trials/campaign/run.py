"""A campaign run: seeded intrusions in blocks, kept as a few columns of times."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import BoolArray, FloatArray, IntArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.trials.campaign.inputs import Inputs, Streams, drawn, picked
from wardwright.trials.campaign.play import Heard, Played, heard, play
from wardwright.trials.campaign.setting import Setting, setting_of
from wardwright.trials.draws import SEED

TRIALS = 100_000
"""Intrusions of one campaign, where no other number is asked for. [-]"""
BLOCK = 25_000
"""Intrusions that are played at once: memory does not grow with their number, but for the columns kept. [-]"""
MISSES_KEPT = 4_000
"""Misses of which all inputs are kept, to trace them. [-]"""
LOSSES_FROM = 20_000
"""Intrusions on which every single loss is tried, the first ones. [-]"""
CONFIRMATION = "confirmation-window"
NOTHING_LOST = ""


class Columns(NamedTuple):
    """What is kept of each of N intrusions; infinite where a thing never happens. [s]"""

    way: IntArray
    first_goal: IntArray
    notice: FloatArray
    sounder: FloatArray
    message: FloatArray
    second: FloatArray
    """From the first to a second, independent detection."""
    touched: FloatArray
    """The first target reached."""
    unit: FloatArray
    """The control unit reached."""
    broken: FloatArray
    """The control unit broken."""
    at_target: FloatArray
    """Each target reached, shape (T, N)."""


@dataclass(frozen=True, eq=False)
class Campaign:
    """A campaign and what came of it; not to be written to."""

    setting: Setting
    seed: int
    trials: int
    columns: Columns
    missed: Inputs
    """Inputs of the first misses."""
    losses: dict[str, tuple[BoolArray, BoolArray]]
    """Lost detector -> by intrusion, whether the sounder and the message are still in time; first with none lost."""

    @property
    def sounder_in_time(self) -> BoolArray:
        """Whether a sounder sounds before a target is touched, or the intruder leaves without; shape (N,)."""
        return sounder_in_time(self.columns)

    @property
    def message_in_time(self) -> BoolArray:
        """Whether a message leaves the house before the control unit is broken; shape (N,)."""
        return message_in_time(self.columns)


def sounder_in_time(columns: Columns) -> BoolArray:
    """Whether a sounder sounds before the first target is touched; the control unit where there are no targets."""
    before = columns.touched if len(columns.at_target) else columns.unit
    return np.isfinite(columns.sounder) & (columns.sounder < before)


def message_in_time(columns: Columns) -> BoolArray:
    """Whether a message leaves the house before the control unit is broken."""
    return np.isfinite(columns.message)


def campaign(
    site: Site, catalogue: Catalogue, *, trials: int = TRIALS, seed: int = SEED, part: str = "full"
) -> Campaign:
    """Send seeded intruders into a house.

    Parameters
    ----------
    site : Site
        The site.
    catalogue : Catalogue
        Sheets, figures, entry shares and limits.
    trials : int, default TRIALS
        How many; at least 1.
    seed : int, default SEED
        The same seed gives the same intruders, whatever the order of any list of the site.
    part : str, default "full"
        What is set.

    Returns
    -------
    Campaign
        What came of it.

    Raises
    ------
    NotComputable
        If there is no way in, or nothing to go for.
    """
    setting = setting_of(site, catalogue, part=part)
    streams, window = Streams(seed), window_of(site, catalogue)
    blocks: list[Columns] = []
    missed: list[Inputs] = []
    losses: dict[str, list[tuple[BoolArray, BoolArray]]] = {}
    kept = done = 0
    while done < trials:
        count = min(BLOCK, trials - done)
        inputs = drawn(streams, catalogue, setting.who, room=setting.room, count=count)
        played = play(setting.ground, setting.kit, inputs)
        columns = columns_of(setting, inputs, played, alarm=heard(played, setting.kit, inputs, window=window))
        blocks.append(columns)
        misses = np.flatnonzero(~(sounder_in_time(columns) & message_in_time(columns)))[: MISSES_KEPT - kept]
        kept += len(misses)
        missed.append(picked(inputs, misses))
        if done < LOSSES_FROM:
            rows = np.arange(min(count, LOSSES_FROM - done))
            for name, met in _without_each(setting, picked(inputs, rows), _rows_of(played, rows)).items():
                losses.setdefault(name, []).append(met)
        done += count
    return Campaign(
        setting,
        seed,
        trials,
        Columns(*(np.concatenate(one, axis=-1) for one in zip(*blocks, strict=True))),
        _joined(missed),
        {
            name: (np.concatenate([one for one, _ in met]), np.concatenate([one for _, one in met]))
            for name, met in losses.items()
        },
    )


def window_of(site: Site, catalogue: Catalogue) -> float:
    """Within which a second detection confirms the first, by rule pack; infinite where none is told. [s]"""
    found = catalogue.limits_in(CONFIRMATION, site.place.rule_pack, site.place.country)
    return found[0].value if found else float("inf")


def columns_of(setting: Setting, inputs: Inputs, played: Played, *, alarm: Heard) -> Columns:
    """What is kept of a block."""
    unit = setting.ground.unit
    targets = [i for i, goal in enumerate(setting.goals) if goal.target is not None]
    never = np.full(len(inputs.way), np.inf)
    at_target = played.reached[targets]
    return Columns(
        inputs.way,
        played.first_goal,
        alarm.notice,
        alarm.sounder,
        alarm.message,
        alarm.second,
        at_target.min(axis=0) if targets else never,
        played.reached[unit] if unit is not None else never,
        played.broken,
        at_target,
    )


def _rows_of(played: Played, rows: IntArray) -> Played:
    return Played(
        played.signals[:, rows],
        played.reached[:, rows],
        played.broken[rows],
        played.left[rows],
        played.first_goal[rows],
    )


def _joined(parts: list[Inputs]) -> Inputs:
    across = {"reach", "walked", "tells"}
    return Inputs(
        **{
            name: np.concatenate([getattr(one, name) for one in parts], axis=-1 if name in across else 0)
            for name in Inputs._fields
        }
    )


def _without_each(setting: Setting, inputs: Inputs, played: Played) -> dict[str, tuple[BoolArray, BoolArray]]:
    """The same intrusions with each detector lost. Lost sounders or a lost message path leave nothing to play."""

    def met(changed: Played) -> tuple[BoolArray, BoolArray]:
        columns = columns_of(setting, inputs, changed, alarm=heard(changed, setting.kit, inputs))
        return sounder_in_time(columns), message_in_time(columns)

    found = {NOTHING_LOST: met(played)}
    for number, device in enumerate(setting.devices):
        signals = played.signals.copy()
        signals[number] = np.inf
        found[device.id] = met(played._replace(signals=signals))
    return found
