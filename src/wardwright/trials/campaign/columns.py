"""What is kept of each intrusion, and whether the alarm was in time."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import BoolArray, FloatArray, IntArray
from wardwright.trials.campaign.inputs import Inputs
from wardwright.trials.campaign.play import Heard, Played
from wardwright.trials.campaign.setting import Setting


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


def sounder_in_time(columns: Columns) -> BoolArray:
    """Whether a sounder sounds before the first target is touched; the control unit where there are no targets."""
    before = columns.touched if len(columns.at_target) else columns.unit
    return np.isfinite(columns.sounder) & (columns.sounder < before)


def message_in_time(columns: Columns) -> BoolArray:
    """Whether a message leaves the house before the control unit is broken."""
    return np.isfinite(columns.message)


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
