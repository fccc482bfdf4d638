"""The same intrusions with one thing lost: a detector, a sounder, a message path."""

from __future__ import annotations

import numpy as np

from wardwright.geometry.raster import BoolArray, IntArray
from wardwright.model.catalogue import Catalogue
from wardwright.trials.campaign.columns import columns_of, message_in_time, sounder_in_time
from wardwright.trials.campaign.inputs import Inputs, messages
from wardwright.trials.campaign.play import Kit, Played, heard
from wardwright.trials.campaign.setting import Setting
from wardwright.trials.campaign.streams import Streams

NOTHING_LOST = ""
Met = tuple[BoolArray, BoolArray]
"""By intrusion, whether the sounder and the message are in time."""


def path_key(path: str) -> str:
    """What the loss of a message path is called."""
    return f"message path {path}"


def losses_of(
    setting: Setting, catalogue: Catalogue, inputs: Inputs, *, played: Played, seed: int
) -> dict[str, Met]:
    """Play what the alarm makes of some intrusions with each thing lost in turn.

    Parameters
    ----------
    setting : Setting
        What they were played on.
    catalogue : Catalogue
        Figures.
    inputs : Inputs
        The first intruders of a campaign.
    played : Played
        What came of them.
    seed : int
        Of the campaign: whoever's message path is lost sends by the other as luck would have had it.

    Returns
    -------
    dict
        Id of a detector or sounder, or `path_key` of a path -> who is still caught; `NOTHING_LOST` first.
    """

    def met(changed: Played = played, kit: Kit = setting.kit, told: Inputs = inputs) -> Met:
        columns = columns_of(setting, told, changed, alarm=heard(changed, kit, told))
        return sounder_in_time(columns), message_in_time(columns)

    found = {NOTHING_LOST: met()}
    for number, device in enumerate(setting.devices):
        signals = played.signals.copy()
        signals[number] = np.inf
        found[device.id] = met(played._replace(signals=signals))
    for sounder in setting.sounders:
        kit = setting.kit._replace(sounds=sounder.others, sounds_alone=sounder.others_alone)
        found[sounder.device.id] = met(kit=kit)
    count = len(inputs.way)
    for path in sorted(setting.who.paths):
        left = setting.who.paths - {path}
        message = messages(Streams(seed), catalogue, left, count=count) if left else np.full(count, np.inf)
        found[path_key(path)] = met(told=inputs._replace(message=message))
    return found


def first_of(played: Played, rows: IntArray) -> Played:
    """Some of the intrusions that were played."""
    return Played(
        played.signals[:, rows],
        played.reached[:, rows],
        played.broken[rows],
        played.left[rows],
        played.first_goal[rows],
    )
