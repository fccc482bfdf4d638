"""What a rule says: a frozen record, compared by value."""

from __future__ import annotations

from typing import Literal

from wardwright.model.device import DeviceKind
from wardwright.model.estimate import Estimate
from wardwright.model.record import Id, Record
from wardwright.model.sketch import Sketch

Severity = Literal["must mend", "advise", "check with the standard", "not run"]
"""`must mend`: a contradiction, the device's own sheet, or a need that was stated. `advise`: common practice.
`check with the standard`: from memory, or editions conflict. `not run`: something it needs is not known."""


class Mend(Record):
    """A computed cure: what to change, as data."""

    action: Literal[
        "move-device", "turn-device", "add-device", "remove-device", "change-behaviour", "change-programme",
        "rename", "change-device", "change-mount", "replace-device", "change-lock", "add-light", "change-covering",
        "keep-shut", "leave-open", "move-thing", "bar-climb", "change-parts", "add-to-part", "behave-part-set",
        "tell", "other",
    ]  # fmt: skip
    """`replace-device`: another sheet, so another thing is fitted. `change-device`: the same thing, set otherwise.
    `move-thing`: furniture, or what stands outside. `bar-climb`: what stays there is made unfit to climb."""
    subject: str
    """Id of the thing to change, or of the place where something is missing."""
    values: tuple[tuple[str, str | float | int | bool], ...] = ()
    """Names and values of what would be changed, such as ("height_m", 2.2)."""
    gain: Estimate | None = None
    """What it would bring, where that was worked out."""


class Finding(Record):
    """One thing that a rule found, or why it could not be run."""

    code: str
    """The rule's code, for ever."""
    rule: str
    """The rule's name: the fault."""
    severity: Severity
    subject: str
    """Id of the thing it is about; the site's name when it is about the whole."""
    message: str
    """One line in plain words, no full stop."""
    cure: str
    """What to do, one line."""
    estimate: Estimate | None = None
    """The deciding number."""
    limit: float | None = None
    """What it is held against, in the estimate's unit."""
    mends: tuple[Mend, ...] = ()
    sketches: tuple[Sketch, ...] = ()
    related: tuple[Id, ...] = ()
    """Other things it touches."""
    lacks: DeviceKind | None = None
    """The kind of device that the site has none of, where the rule was not run for want of one."""
    accepted: str = ""
    """Why the user lives with it, where the site's needs say so: it is told apart, and never hidden."""
