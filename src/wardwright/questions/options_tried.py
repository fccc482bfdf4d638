"""Options for a quote, built from mends that were tried: each told by what it changes, not by a number of devices."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import islice
from typing import NamedTuple

from wardwright.costing.option import OptionChange
from wardwright.errors import InputError
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, DeviceKind, OpeningMount, kind_words
from wardwright.model.edits import edited
from wardwright.model.placement import space_at, standing
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.protection import Noticed, protection
from wardwright.rules.finding import Mend
from wardwright.rules.mending import operations_of

AS_IT_STANDS, NEXT_STEP, ALL_STEPS = "the design as it stands", "the next step", "all steps that were tried"
MOST_STEPS = 6
"""How many mends the widest option has. [-]"""
CHANGING = ("add-device", "replace-device", "move-device")
"""Mends that somebody pays for."""
RANKS: dict[Noticed, int] = {"not": 0, "further in": 1, "in the room": 2, "at once": 3}
ALSO_GAINED = (12, 13)
"""Questions whose mends gain something else than being noticed: a second message path, a sounder that is heard."""
NO_PLACE: tuple[DeviceKind, ...] = ("control-unit", "transmitter", "router", "repeater", "keyfob")
"""Kinds whose place is told to nobody but the fitter."""


_Noticed = dict[tuple[str, bool], Noticed]
"""Opening, and whether through its glass -> how that is noticed."""


class Tried(NamedTuple):
    """One option: the site as it would be, what was done, and what that changes."""

    name: str
    site: Site
    mends: tuple[Mend, ...]
    changes: tuple[OptionChange, ...]


def options_tried(site: Site, catalogue: Catalogue, answers: Sequence[Answer]) -> tuple[Tried, ...]:
    """Build options from the mends of the answers.

    Parameters
    ----------
    site : Site
        The design as it stands.
    catalogue : Catalogue
        What is added.
    answers : sequence of Answer
        Worst first: their mends are tried in that order.

    Returns
    -------
    tuple of Tried
        The design as it stands first; then the mend that changes most, then that with the others that still change
        something. Fewer where nothing changes anything.
    """
    found = [Tried(AS_IT_STANDS, site, (), ())]
    wanted = tuple(_wanted(answers))
    steps: list[Mend] = []
    here, noticed = site, _noticed(site, catalogue)
    while len(steps) < MOST_STEPS:
        best = _best(here, catalogue, [mend for mend in wanted if mend not in steps], noticed=noticed)
        if best is None:
            break
        mend, here, noticed = best
        steps.append(mend)
        if len(steps) == 1:
            found.append(Tried(NEXT_STEP, here, (mend,), _changes(site, here, catalogue)))
    for mend in _taken_along(answers):
        after = _done(here, catalogue, mend)
        if after is not None:
            here = after
            steps.append(mend)
    if len(steps) > len(found) - 1:
        found.append(Tried(ALL_STEPS, here, tuple(steps), _changes(site, here, catalogue)))
    return tuple(found)


def _wanted(answers: Sequence[Answer]) -> Iterator[Mend]:
    """Mends of what is not met, each once."""
    seen = set()
    for answer in answers:
        for mend in answer.mends if answer.verdict in ("bad", "thin") else ():
            key = (mend.action, mend.subject, mend.values)
            if mend.action in CHANGING and key not in seen:
                seen.add(key)
                yield mend


def _taken_along(answers: Sequence[Answer]) -> Iterator[Mend]:
    """Of each question that gains something else than being noticed, the first mend that adds a device."""
    for number in ALSO_GAINED:
        mends = (
            mend
            for answer in answers
            if answer.question == number and answer.verdict == "bad"
            for mend in answer.mends
            if mend.action == "add-device" and dict(mend.values).get("on") is not None
        )
        yield from islice(mends, 1)


def _best(
    site: Site, catalogue: Catalogue, wanted: Sequence[Mend], *, noticed: _Noticed
) -> tuple[Mend, Site, _Noticed] | None:
    """The mend that lets most openings be noticed sooner, and lets none be noticed later; None where none does."""
    best: tuple[int, Mend, Site, _Noticed] | None = None
    for mend in wanted:
        after = _done(site, catalogue, mend)
        if after is None:
            continue
        then = _noticed(after, catalogue)
        gains = [RANKS[then[key]] - RANKS[now] for key, now in noticed.items() if key in then]
        gain = sum(gains)
        if gain > 0 and min(gains) >= 0 and (best is None or gain > best[0]):
            best = (gain, mend, after, then)
    return None if best is None else best[1:]


def _done(site: Site, catalogue: Catalogue, mend: Mend) -> Site | None:
    """The site with a mend carried out; None where it cannot be, or no more."""
    operations = operations_of(site, catalogue, mend)
    if operations is None:
        return None
    try:
        return edited(site, operations)
    except InputError:
        return None


def _noticed(site: Site, catalogue: Catalogue) -> _Noticed:
    """How coming in by each opening is noticed with everything set: opened, and through its glass."""
    found: _Noticed = {}
    for cover in protection(site, catalogue)[:1]:
        for one in cover.openings:
            for is_glass, word in ((False, one.opened), (True, one.glass)):
                if word is not None and one.is_counted:
                    found[one.opening, is_glass] = word
    return found


def _changes(before: Site, after: Site, catalogue: Catalogue) -> tuple[OptionChange, ...]:
    was, is_now = _noticed(before, catalogue), _noticed(after, catalogue)
    names = {one.id: one.name for one in before.openings}
    openings = [
        OptionChange(
            what="opening", name=names[ident], subject=ident, is_glass=is_glass, before=word, after=then
        )
        for (ident, is_glass), word in was.items()
        if (then := is_now.get((ident, is_glass), word)) != word
    ]
    known = {one.id for one in before.devices}
    devices = []
    for device in after.devices:
        kind = catalogue.sheet(device.sheet).kind
        if device.id not in known and not isinstance(
            device.mount, OpeningMount
        ):  # openings say it themselves
            room = "" if kind in NO_PLACE else _room(after, device)
            devices.append(OptionChange(what="device", name=kind_words(kind), subject=room))
    return (*openings, *devices)


def _room(site: Site, device: Device) -> str:
    at = standing(site, device)
    space = space_at(site, at.storey, (at.x_m, at.y_m))
    return "" if space is None else space.id
