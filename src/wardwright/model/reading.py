"""Radio levels read on site: a few of them pull the radio of the model to the house."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from wardwright.model.record import Id, Marked, Point3


class Reading(Marked):
    """One radio level, as the receiver showed it, all doors shut."""

    id: Id
    device: Id
    """The device that was heard."""
    receiver: Id
    """The device that heard it: a control unit, a repeater, a router."""
    level_dbm: Annotated[float, Field(ge=-140, le=20)]
    """As shown; the mean of a few seconds. [dB re 1 mW]"""
    held_at_m: Point3 | None = None
    """Where the device was held, above the house's zero; None: where it stands. [m]"""
