"""Why intruders were missed: each miss traced to what lies outside the design case, or to the design itself.

The design case is played again for each traced miss: the same way in and the same order of goals, but a hurried
intruder, the slow message path, doors as told, and movement detectors that notice after 1.5 m inside their low-side
shape. If the miss is caught then, one input after another is set back alone, and those that mend it by themselves are
named. If it is missed even so, the design does not hold from there; where `timely` says that it does, it is a bug.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from functools import partial
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import BoolArray
from wardwright.model.catalogue import Catalogue
from wardwright.trials.campaign.columns import columns_of, message_in_time, sounder_in_time
from wardwright.trials.campaign.inputs import Inputs, design_values, picked
from wardwright.trials.campaign.play import heard, play
from wardwright.trials.campaign.run import Campaign
from wardwright.trials.campaign.setting import Setting
from wardwright.trials.timely import Need, is_every_way_caught

SEVERAL = "several of these together"
DESIGN = "the design does not hold from there"
NEEDS: tuple[Need, ...] = ("sounder", "message")


class Traced(NamedTuple):
    """Misses of one need, traced."""

    need: Need
    misses: int
    """How many were traced."""
    design: int
    """Of these, missed in the design case too. [-]"""
    causes: tuple[tuple[str, int], ...]
    """Input -> misses that it mends by itself once it is as in the design case, most first; `SEVERAL`: those that
    only several together mend. A miss may stand in more than one."""
    bugs: tuple[tuple[str, str], ...]
    """Ways in and first goals from which the design was said to hold, and did not."""


def traced(campaign: Campaign, catalogue: Catalogue) -> tuple[Traced, ...]:
    """Trace the kept misses of a campaign, once for each need.

    Parameters
    ----------
    campaign : Campaign
        The campaign.
    catalogue : Catalogue
        Figures.

    Returns
    -------
    tuple of Traced
        First for the sounder, then for the message.
    """
    return tuple(_traced(campaign.setting, catalogue, campaign.missed, need=need) for need in NEEDS)


def _traced(setting: Setting, catalogue: Catalogue, kept: Inputs, *, need: Need) -> Traced:
    met = partial(_met, setting, need=need)
    inputs = picked(kept, np.flatnonzero(~met(kept)))
    changes = _changes(catalogue)
    design = inputs
    for change in changes.values():
        design = change(design)
    held = met(design)
    bugs = _bugs(setting, catalogue, picked(inputs, np.flatnonzero(~held)), need=need)
    outside = picked(inputs, np.flatnonzero(held))
    alone = {name: met(change(outside)) for name, change in changes.items()}
    counts = [(name, int(np.count_nonzero(mended))) for name, mended in alone.items()]
    none = np.logical_not(np.logical_or.reduce([*alone.values(), np.zeros(len(outside.way), dtype=np.bool_)]))
    counts.append((SEVERAL, int(np.count_nonzero(none))))
    causes = sorted((one for one in counts if one[1]), key=lambda one: (one[0] == SEVERAL, -one[1], one[0]))
    return Traced(need, len(inputs.way), int(np.count_nonzero(~held)), tuple(causes), bugs)


def _met(setting: Setting, inputs: Inputs, *, need: Need) -> BoolArray:
    played = play(setting.ground, setting.kit, inputs)
    columns = columns_of(setting, inputs, played, alarm=heard(played, setting.kit, inputs))
    return sounder_in_time(columns) if need == "sounder" else message_in_time(columns)


_Change = Callable[[Inputs], Inputs]


def _changes(catalogue: Catalogue) -> dict[str, _Change]:
    """What sets each input back to the design case, in words for people."""
    value = design_values(catalogue)

    def all_of(**columns: float) -> _Change:
        return partial(_set_to, columns)

    return {
        "a movement detector that noticed later than the design takes it to": all_of(is_surely=True),
        "a movement detector that was still asleep": all_of(since=np.inf),
        "a device at an opening that did not tell": all_of(tells=True),
        "inside doors that stood otherwise than told": all_of(doors_otherwise=False),
        "the intruder's pace": all_of(pace=value["pace"], is_cautious=False),
        "the intruder's pace on stairs": all_of(stairs=value["stairs"]),
        "quickly opened inside doors": all_of(door=value["door"]),
        "a quick climb in": all_of(climb=value["climb"]),
        "a control unit quickly broken": all_of(breaking=value["breaking"]),
        "slow radio": all_of(radio=value["radio"]),
        "a sounder slow to start": all_of(sounder=value["sounder"]),
        "a message slower than the slow path, or no path": all_of(message=value["message"]),
        "a short stay": all_of(stay=np.inf),
    }


def _set_to(values: Mapping[str, float], inputs: Inputs) -> Inputs:
    """The same inputs with some columns all of one value."""
    return inputs._replace(
        **{name: np.full_like(getattr(inputs, name), value) for name, value in values.items()}
    )


def _bugs(
    setting: Setting, catalogue: Catalogue, missed: Inputs, *, need: Need
) -> tuple[tuple[str, str], ...]:
    """Where the design case is missed although every way was said to be caught in time."""
    found = set()
    first = missed.order[:, 0]
    unit = setting.ground.unit
    # Whoever breaks the control unit before the first target is held by the message need from there.
    at_target = (
        first
        if unit is None or missed.order.shape[1] < 2
        else np.where(first == unit, missed.order[:, 1], first)
    )
    goals = at_target if need == "sounder" else np.full(len(first), -1 if unit is None else unit)
    pairs = {
        (int(way), int(goal), bool(is_first))
        for way, goal, is_first in zip(missed.way, goals, first == unit, strict=True)
        if goal >= 0
    }
    for way, goal, unit_first in sorted(pairs):
        says = partial(is_every_way_caught, setting.site, catalogue, way=setting.ways[way], part=setting.part)
        holds = says(goal=setting.goals[goal].spot, need=need)
        if holds and need == "sounder" and unit_first and unit is not None and goal != unit:
            holds = says(goal=setting.goals[unit].spot, need="message")
        if holds:
            opening = setting.ways[way].opening
            found.add((f"{opening.id} {setting.ways[way].manner}", setting.goals[goal].id))
    return tuple(sorted(found))
