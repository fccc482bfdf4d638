"""A campaign run: seeded intrusions in blocks, kept as a few columns of times."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from wardwright.geometry.raster import BoolArray
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.trials.campaign.columns import Columns, columns_of, message_in_time, sounder_in_time
from wardwright.trials.campaign.inputs import Inputs, drawn, picked
from wardwright.trials.campaign.losses import Met, first_of, losses_of
from wardwright.trials.campaign.play import heard, play
from wardwright.trials.campaign.setting import Setting, setting_of
from wardwright.trials.campaign.streams import Streams
from wardwright.trials.draws import SEED
from wardwright.trials.independent import confirmation_window

TRIALS = 100_000
"""Intrusions of one campaign, where no other number is asked for. [-]"""
BLOCK = 25_000
"""Intrusions that are played at once: memory does not grow with their number, but for the columns kept. [-]"""
MISSES_KEPT = 4_000
"""Misses of which all inputs are kept, to trace them. [-]"""
LOSSES_FROM = 20_000
"""Intrusions on which every single loss is tried: the first ones, all in the first block. [-]"""


@dataclass(frozen=True, eq=False)
class Campaign:
    """A campaign and what came of it; not to be written to."""

    setting: Setting
    seed: int
    trials: int
    columns: Columns
    missed: Inputs
    """Inputs of the first misses."""
    losses: dict[str, Met]
    """What is lost -> who is still caught; as `losses_of` has it."""

    @property
    def sounder_in_time(self) -> BoolArray:
        """Whether a sounder sounds before a target is touched, or the intruder leaves without; shape (N,)."""
        return sounder_in_time(self.columns)

    @property
    def message_in_time(self) -> BoolArray:
        """Whether a message leaves the house before the control unit is broken; shape (N,)."""
        return message_in_time(self.columns)


def campaign(
    site: Site,
    catalogue: Catalogue,
    *,
    trials: int = TRIALS,
    seed: int = SEED,
    part: str = "full",
    tell: Callable[[int], None] | None = None,
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
    tell : callable, optional
        Told how many are done before each block; what it raises ends the campaign.

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
    losses: dict[str, Met] = {}
    kept = done = 0
    while done < trials:
        count = min(BLOCK, trials - done)
        if tell is not None:
            tell(done)
        inputs = drawn(streams, catalogue, setting.who, room=setting.room, count=count)
        played = play(setting.ground, setting.kit, inputs)
        columns = columns_of(setting, inputs, played, alarm=heard(played, setting.kit, inputs, window=window))
        blocks.append(columns)
        misses = np.flatnonzero(~(sounder_in_time(columns) & message_in_time(columns)))[: MISSES_KEPT - kept]
        kept += len(misses)
        missed.append(picked(inputs, misses))
        if not done:
            rows = np.arange(min(count, LOSSES_FROM))
            losses = losses_of(
                setting, catalogue, picked(inputs, rows), played=first_of(played, rows), seed=seed
            )
        done += count
    return Campaign(
        setting,
        seed,
        trials,
        Columns(*(np.concatenate(one, axis=-1) for one in zip(*blocks, strict=True))),
        _joined(missed),
        losses,
    )


def window_of(site: Site, catalogue: Catalogue) -> float:
    """Within which a second detection confirms the first, by rule pack; infinite where none is told. [s]"""
    limit = confirmation_window(site, catalogue)
    return float("inf") if limit is None else limit.value


def _joined(parts: list[Inputs]) -> Inputs:
    across = {"reach", "walked", "tells"}
    return Inputs(
        **{
            name: np.concatenate([getattr(one, name) for one in parts], axis=-1 if name in across else 0)
            for name in Inputs._fields
        }
    )
