"""How far a device may be fixed from its place before an answer fails: by trying moves and turns, a few for each way.

On site a stud, a pipe or a picture is in the way: so much the fitter may give way without asking.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import lru_cache
from typing import Literal, NamedTuple

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import CeilingMount, Device, WallMount
from wardwright.model.placement import ceiling_height, direction, space_at, standing
from wardwright.model.record import Id, Record
from wardwright.model.site import Site
from wardwright.questions.table import ask_in_hand
from wardwright.rules.table import check_in_hand

Way = Literal["left", "right", "up", "down", "turned left", "turned right"]
"""As one faces the wall; turned as seen from above, left anticlockwise."""
MOVES_M = (0.05, 0.1, 0.2, 0.4)
"""How far a device is tried along its wall, up and down: to 40 cm, since beyond it is another place. [m]"""
TURNS_DEG = (2.0, 5.0, 10.0, 20.0)
"""How far one that looks somewhere is tried turned. [deg]"""
CLEAR_M = 0.05
"""A device's middle stays so far from an opening, the floor and the ceiling. [m] (assumption)"""
LOOKING = ("movement-detector", "camera", "glass-break-detector")
FAILED = ("bad", "unknown")


class Leeway(Record):
    """How far a device may go one way."""

    way: Way
    unit: Literal["m", "deg"]
    holds: float
    """The farthest that was tried and nothing failed; 0: the nearest fails. [m or deg]"""
    fails_at: float | None = None
    """The nearest that was tried and something failed; None: none did. [m or deg]"""
    question: int | None = None
    """Number of the question whose answer fails there."""
    rule: str = ""
    """Code of the rule that fires there; empty with no question: the wall, or the room, ends there."""
    subject: str = ""
    """Id of what that answer or finding is about."""


class RoomToMove(Record):
    """How far one device may be fixed from its place."""

    device: Id
    ways: tuple[Leeway, ...]
    """Empty: it is bound to its opening, or stands free."""


class _Held(NamedTuple):
    """What holds now, and may fail."""

    answers: frozenset[tuple[int, str]]
    findings: frozenset[tuple[str, str]]


class _Fault(NamedTuple):
    question: int | None
    rule: str
    subject: str


NOTHING = _Fault(None, "", "")
"""No answer fails and no rule fires: there is no place there."""


def room_to_move(site: Site, catalogue: Catalogue, device: Device) -> RoomToMove:
    """Try a device elsewhere, farther and farther each way, until something fails.

    Parameters
    ----------
    site : Site
        The design as it stands.
    catalogue : Catalogue
        Sheets and figures.
    device : Device
        One of its devices.

    Returns
    -------
    RoomToMove
        An answer fails that is met now, in full or thinly, and would not be; or a rule would find what must be
        mended and does not now. The answers are those that are asked while something is dragged: no mends.
    """
    now = _now(site, catalogue)
    return RoomToMove(
        device=device.id,
        ways=tuple(_leeway(site, catalogue, device, way=way, now=now) for way in _ways(catalogue, device)),
    )


def _ways(catalogue: Catalogue, device: Device) -> Iterator[Way]:
    if isinstance(device.mount, WallMount):
        yield from ("left", "right", "up", "down")
    if isinstance(device.mount, WallMount | CeilingMount) and catalogue.sheet(device.sheet).kind in LOOKING:
        yield from ("turned left", "turned right")


def _leeway(site: Site, catalogue: Catalogue, device: Device, *, way: Way, now: _Held) -> Leeway:
    is_turn = way.startswith("turned")
    steps = TURNS_DEG if is_turn else MOVES_M
    holds, fails_at, why = 0.0, None, NOTHING

    def fault_at(step: float) -> _Fault | None:
        other = _turned(site, device, way, step=step) if is_turn else _moved(site, device, way, step=step)
        return NOTHING if other is None else _fails(site, catalogue, other, now=now)

    # The nearest is tried only where the next fails: what holds farther off is taken to hold nearer by.
    for step in steps[1:]:
        fault = fault_at(step)
        if fault is not None:
            fails_at, why = step, fault
            break
        holds = step
    if fails_at == steps[1]:
        nearest = fault_at(steps[0])
        if nearest is None:
            holds = steps[0]
        else:
            fails_at, why = steps[0], nearest
    return Leeway(
        way=way,
        unit="deg" if is_turn else "m",
        holds=holds,
        fails_at=fails_at,
        question=why.question,
        rule=why.rule,
        subject=why.subject,
    )


@lru_cache(maxsize=4)
def _now(site: Site, catalogue: Catalogue) -> _Held:
    """What holds in the design as it stands: the same for all its devices."""
    return _held(site, catalogue)


def _held(site: Site, catalogue: Catalogue) -> _Held:
    answers = frozenset(
        (one.question, one.subject_id) for one in ask_in_hand(site, catalogue) if one.verdict not in FAILED
    )
    return _Held(answers, _must_mend(site, catalogue))


def _must_mend(site: Site, catalogue: Catalogue) -> frozenset[tuple[str, str]]:
    found = check_in_hand(site, catalogue, has_house_moved=False)
    return frozenset((one.code, one.subject) for one in found if one.severity == "must mend")


def _fails(site: Site, catalogue: Catalogue, other: Device, *, now: _Held) -> _Fault | None:
    """The first thing that fails with a device elsewhere."""
    tried = site.model_copy(
        update={"devices": tuple(other if one.id == other.id else one for one in site.devices)}
    )
    then = _held(tried, catalogue)
    lost = sorted(now.answers - then.answers)
    if lost:
        return _Fault(lost[0][0], "", lost[0][1])
    new = sorted(then.findings - now.findings)
    return _Fault(None, *new[0]) if new else None


def _moved(site: Site, device: Device, way: Way, *, step: float) -> Device | None:
    """A device elsewhere on its wall; None where its wall or room ends there, or an opening is."""
    mount = device.mount
    if not isinstance(mount, WallMount):
        return None
    # Whoever faces a wall from its left side has its far end on their left.
    ahead = 1.0 if (way == "left") == (mount.side == "left") else -1.0
    change = (
        {"height_m": mount.height_m + (step if way == "up" else -step)}
        if way in ("up", "down")
        else {"offset_m": mount.offset_m + ahead * step}
    )
    other = device.model_copy(update={"mount": mount.model_copy(update=change)})
    return other if _hangs(site, device, other) else None


def _turned(site: Site, device: Device, way: Way, *, step: float) -> Device:
    heading = standing(site, device).heading_deg + (step if way == "turned left" else -step)
    return device.model_copy(update={"heading_deg": math.fmod(heading + 360.0, 360.0)})


def _hangs(site: Site, device: Device, other: Device) -> bool:
    """Whether a device can hang where it is tried: on its wall, in its room, clear of openings."""
    mount = other.mount
    if not isinstance(mount, WallMount):
        return False
    wall = site.wall(mount.wall)
    was, at = standing(site, device), standing(site, other)
    rooms = [space_at(site, one.storey, (one.x_m, one.y_m)) for one in (was, at)]
    top = ceiling_height(site, at.storey, (at.x_m, at.y_m))
    if rooms[0] is None:  # outside the wall goes on as far as is told, and nobody told where the eaves are
        top = math.inf if wall.height_m is None else wall.base_m + wall.height_m
    length = direction(wall.line_m)[2]
    is_on = 0.0 <= mount.offset_m <= length and CLEAR_M <= mount.height_m <= top - CLEAR_M
    return (
        is_on
        and rooms[0] == rooms[1]
        and not any(
            abs(mount.offset_m - one.offset_m) < one.width_m / 2 + CLEAR_M
            and one.sill_m - CLEAR_M < mount.height_m < one.head_m + CLEAR_M
            for one in site.openings
            if one.wall == wall.id
        )
    )
