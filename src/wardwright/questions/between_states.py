"""Two states of a house set side by side: what became of a device, and whether a number is another."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Literal, NamedTuple

from wardwright.model.changes import Change, differences
from wardwright.model.device import Device
from wardwright.model.record import Record
from wardwright.questions.answer import Answer
from wardwright.questions.compared import State

TestKind = Literal[
    "view", "beyond view", "opening", "operation", "shown", "radio", "sound", "entry", "exit", "night trip", "pet",
    "picture", "message",
]  # fmt: skip
"""`view`: walk where a detector is to notice. `beyond view`: walk where it is to stay quiet. `operation`: operate a
device as its sheet says. `shown`: its zone shows on the display under the right name. The rest as they are named."""

SAME_SHARE = 1e-6
"""Numbers closer than this share of themselves are the same. [-]"""
ON_PAPER: frozenset[str] = frozenset({"name", "basis", "made_on", "is_existing"})
"""What of a device is on paper only: it asks for no test. So does what is only decided now, and was not before."""


class DueTest(Record):
    """One test to be repeated."""

    kind: TestKind
    about: str
    """Id of the device, door, bed, person or pet."""
    why: str
    """What is another, in a few words."""


class Both(NamedTuple):
    """Two states of a house, and what differs."""

    before: State
    after: State
    changes: Mapping[str, Change]
    old: Mapping[tuple[int, str], Answer]

    def pairs(self, question: int) -> Iterator[tuple[Answer | None, Answer]]:
        """The answers to one question as they are now, each with what it was."""
        for one in self.after.answers:
            if one.question == question:
                yield self.old.get((question, one.subject_id)), one


def both_states(before: State, after: State) -> Both:
    """Two states side by side."""
    changes = {one.key: one for one in differences(before.site, after.site)}
    return Both(before, after, changes, {(one.question, one.subject_id): one for one in before.answers})


def became(both: Both, ident: str) -> str:
    """What became of a device, in a few words; empty where it is as it was, but for its name."""
    change = both.changes.get(f"devices/{ident}")
    if change is None:
        return ""
    if change.before is None:
        return "it is new"
    if not isinstance(change.before, Device) or not isinstance(change.after, Device):
        return ""
    others = {
        name
        for name in Device.model_fields
        if name not in ON_PAPER and _is_other(name, getattr(change.before, name), getattr(change.after, name))
    }
    if not others:
        return ""
    return "it was moved or turned" if others & {"mount", "heading_deg", "tilt_deg"} else "it was changed"


def _is_other(name: str, was: object, now: object) -> bool:
    # A heading that is not decided is straight off the wall: one that is decided now turns it.
    return was != now and (was is not None or name == "heading_deg")


def other_parts(
    was: Answer, now: Answer, *, least: float, beginning: tuple[str, ...], ending: tuple[str, ...] = ()
) -> bool:
    """Whether any number whose name begins or ends so came, went, or moved by more than so much."""
    old, new = (
        {
            part.name: None if part.estimate is None else part.estimate.value
            for part in each.parts
            if part.name.startswith(beginning) or part.name.endswith(ending)
        }
        for each in (was, now)
    )
    return old.keys() != new.keys() or any(apart(old[name], new[name], least) for name in new)


def apart(was: float | None, now: float | None, least: float) -> bool:
    """Whether two numbers differ by more than so much; one that is not known differs from any that is."""
    if was is None or now is None:
        return was is not now
    return abs(now - was) > max(least, SAME_SHARE * max(abs(was), abs(now)))


def value_of(answer: Answer | None) -> float | None:
    """The deciding number of an answer; None where there is none."""
    return None if answer is None or answer.estimate is None else answer.estimate.value
