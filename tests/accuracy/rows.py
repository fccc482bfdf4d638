"""What a row of the accuracy page is, and which modules of the tests give rows: one table, in the page's order.

A module gives rows by a function `accuracy_rows()`. It may stand anywhere under tests/; it is named here once.
"""

from __future__ import annotations

import importlib
import math
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

GIVEN = Path(__file__).resolve().parents[3] / "shared" / "data"
"""House files that nobody here made; they lie beside the repository and are never part of it."""

MARKS = {
    "derived": "worked out by hand, or from a law of physics",
    "reference tool": "worked out by a general-purpose library that knows nothing of this program",
    "published": "a published figure, its source named",
    "from memory": "a standard's or a book's figure that was not looked up again: check it before relying on it",
    "outside fact": "counted by other means in a file that nobody here made",
    "prototype": "an earlier, separate program of the same model: it guards against slips, and proves no truth",
    "assumption": "stated by us: the row shows that the program does what it says, not that the world does",
}
"""How far a row's expected value can be trusted, best known first."""


@dataclass(frozen=True)
class Part:
    """A part of the page: an engine, or a way in."""

    name: str
    modules: tuple[str, ...]
    """Below tests/, dotted."""
    needs_given: bool = False
    """Whether its rows read ../shared/data."""


PARTS = (
    Part("Sight and movement detection", ("accuracy.sight", "accuracy.detection")),
    Part("Walking", ("accuracy.walking",)),
    Part("Sunlight", ("accuracy.sunlight",)),
    Part("Sound", ("accuracy.sound", "accuracy.sound_in_rooms")),
    Part("The race", ("trials.test_zone_response",)),
    Part("Small houses by hand", ("accuracy.hand_worked",)),
    Part("Adversary path analysis", ("accuracy.interruption",)),
    Part("Radio", ("accuracy.radio",)),
    Part("Cells and stand-by batteries", ("accuracy.power",)),
    Part("Cameras", ("accuracy.video",)),
    Part("Distances of the siting rules", ("accuracy.siting",)),
    Part("Work and prices", ("accuracy.costing",)),
    Part("Figures of the catalogue", ("accuracy.figures",)),
    Part("Radio in a measured flat", ("accuracy.flat",), needs_given=True),
    Part("Houses brought in", ("accuracy.houses",), needs_given=True),
)
"""Every module that gives rows. A new one is one more name here."""


@dataclass(frozen=True)
class Row:
    """One value of the program beside one that is not its own."""

    quantity: str
    """What is measured, its unit in square brackets at the end."""
    source: str
    expected: float
    computed: float
    tolerance: float
    why: str
    """Why the tolerance is what it is."""
    mark: str
    bound: str = "equal"
    """`equal`; `at most` or `at least`, where only one side is wrong and the expected value is the limit."""

    @property
    def error(self) -> float:
        """How far it is off; 0 on the right side of a limit."""
        off = self.computed - self.expected
        if math.isnan(off):
            return math.inf
        return {"equal": abs(off), "at most": max(0.0, off), "at least": max(0.0, -off)}[self.bound]

    @property
    def is_met(self) -> bool:
        """Whether it is within its tolerance."""
        return self.error <= self.tolerance


def rows_of(part: Part) -> tuple[Row, ...]:
    """All rows of one part."""
    givers: Iterable[Callable[[], Iterable[Row | Mapping[str, Any]]]] = (
        importlib.import_module(name).accuracy_rows for name in part.modules
    )
    return tuple(row if isinstance(row, Row) else Row(**row) for giver in givers for row in giver())


def can_run(part: Part) -> bool:
    """Whether what the part reads is there."""
    return not part.needs_given or GIVEN.is_dir()
