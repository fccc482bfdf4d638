"""What was written down on site, as data: that a device is fitted, and what came of a test."""

from __future__ import annotations

from typing import Literal

from wardwright.model.record import Record

Step = Literal["fit", "prove"]
Outcome = Literal["done", "passed", "not passed", "not done"]
OUTCOMES: dict[Step, tuple[Outcome, ...]] = {
    "fit": ("done", "not done"),
    "prove": ("passed", "not passed", "not done"),
}
"""What may be written down in each step. What is not done is never passed."""


class SiteResult(Record):
    """The last that was written down of one device or one test."""

    number: int
    step: Step
    key: str
    """Id of the device that is fitted, or what the test is known by."""
    outcome: Outcome
    reading: str
    """As it was read, with its unit; empty: nothing was read."""
    remark: str
    revision: int
    """Of the house that it was fitted or tested by. [-]"""
    author: str
    at: str
    """When, by the clock of the machine that keeps the job (UTC, ISO 8601)."""
    earlier: str
    """What is another since, so that it is of an earlier revision; empty: it holds for the house as it is."""
