"""The published path of the interruption estimate as a straight house, through the campaign.

Source: M. L. Garcia, Design and Evaluation of Physical Protection Systems, the sabotage path, from memory (all its
rows and variants in closed form: `tests/accuracy/interruption.py`). Here a window is the fence, climbed through in
10 s; at 0.5 m/s it is 6 m, 12 s, to a first door, which takes 90 s, 5 m, 10 s, to a second, 90 s; 0.3 m and 119.4 s
are the 120 s at the target. Contacts tell with 0.9 as a task begins; a message leaves after 300 s, if broadband
works: 0.95. Fence, target and message spread as published; runs and doors do not, since a campaign draws one pace and
one quickness at doors for a whole way. The closed form is asked with the same spreads.

Not asserted, though tempting, because neither always holds: that a sensor moved from the beginning of a task to
its end never helps, and that a longer delay with a spread in proportion never harms. Where time is ample, a spread
that is over before, or a smaller one, counts for more than the time (`tests/trials/test_interruption.py` shows both).
"""

from __future__ import annotations

import math
from typing import NamedTuple

import pytest

from common.straight_houses import contact_on, straight_house, unit_at
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, FreeMount
from wardwright.model.site import Site
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.campaign.run import campaign
from wardwright.trials.draws import Z_95
from wardwright.trials.interruption import AT_START, Response, Tasks, interruption

TRIALS = 40_000
EVEN = {
    "pace-hurried": 0.5, "pass-door": 90.0, "radio-delay": 0.0, "sounder-start": 0.0, "stay": 1e9,
    "share-cautious": 0.0, "share-through-glass": 0.0, "share-doors-as-told": 1.0, "chance-contact-tells": 0.9,
}  # fmt: skip


class Variant(NamedTuple):
    """One row of the table of variants."""

    name: str
    fence: float = 0.0
    """Chance that the fence tells: 0 or 0.9, since all contacts are alike. [-]"""
    target: tuple[float, float] = (120.0, 36.0)
    """Mean and spread. [s]"""
    response: tuple[float, float] = (300.0, 90.0)
    """Mean and spread. [s]"""
    told: float = 0.95
    """Chance that a detection is told. [-]"""


VARIANTS = (
    Variant("as published"),
    Variant("fence detection 0.9", fence=0.9),
    Variant("response 240 s, spread 72 s", response=(240.0, 72.0)),
    Variant("response 200 s, spread 60 s", response=(200.0, 60.0)),
    Variant("target delay 240 s, spread 72 s", target=(240.0, 72.0)),
    Variant("every detection told", told=1.0),
    Variant("no spread of the response", response=(300.0, 0.0)),
)


def world(one: Variant) -> Catalogue:
    """The catalogue with the figures of a variant: normal where they spread."""
    mean, spread = one.response
    drawn = {
        "climb-in": (10.0, 3.0),
        "break-control-unit": (one.target[0] - 0.6, one.target[1]),
        "message-broadband": (mean, spread),
        "share-broadband-up": (one.told, 0.0),
    } | {name: (value, 0.0) for name, value in EVEN.items()}
    real = load_catalogue()
    rows = tuple(
        row.model_copy(
            update={
                "value": drawn[row.id][0],
                "low": drawn[row.id][0] - Z_95 * drawn[row.id][1],
                "high": drawn[row.id][0] + Z_95 * drawn[row.id][1],
            }
        )
        if row.id in drawn
        else row
        for row in real.figures
    )
    return real.model_copy(update={"figures": rows})


def path_as_house(one: Variant) -> Site:
    """Window, two doors, the unit behind the second."""
    mount = FreeMount(storey="ground", at_m=(0.5, 2.0), height_m=1.5)
    kit = [
        (unit_at(12.43), ""),
        (Device(id="sender", name="sender", sheet="message-broadband", mount=mount), ""),
    ]
    kit += [(contact_on(name), "instant") for name in ("door-1", "door-2")]
    if one.fence:
        kit.append((contact_on("back-window"), "instant"))
    return straight_house(kit=kit, doors={17.73: "shut", 12.73: "shut"})


@pytest.mark.parametrize("one", VARIANTS, ids=lambda one: one.name)
def test_a_variant_through_the_campaign(one: Variant) -> None:
    """The share that the message beats, within 4 standard errors of the closed form."""
    found = campaign(path_as_house(one), world(one), trials=TRIALS, seed=20_261_126)
    way = next(i for i, way in enumerate(found.setting.ways) if way.opening.id == "back-window")
    met = found.message_in_time[found.columns.way == way]
    tasks = Tasks(
        detection=(one.fence, 0.0, 0.9, 0.0, 0.9, 0.0),
        delay=(10.0, 12.0, 90.0, 10.0, 90.0, one.target[0]),
        spread=(3.0, 0.0, 0.0, 0.0, 0.0, one.target[1]),
        left=(AT_START,) * 6,
    )
    expected = float(interruption(tasks, Response(*one.response), communication=one.told))
    assert len(met) > TRIALS / 5
    assert 0.05 < expected < 0.95
    error = math.sqrt(expected * (1.0 - expected) / len(met))
    assert abs(float(met.mean()) - expected) < 4.0 * error
