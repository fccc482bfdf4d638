"""How intruders differ: seeded draws, each keyed by what it belongs to, in blocks that follow one another.

Each draw is independent of every other: shares of trials then have the interval of a binomial count. A figure is
drawn from two halves of normal curves that meet at its likely value, as in `draws`, but not cut at 2.5 spreads.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy as np

from wardwright.geometry.raster import BoolArray, FloatArray, IntArray
from wardwright.model.catalogue import Catalogue, Figure
from wardwright.trials.campaign.streams import Streams


class Inputs(NamedTuple):
    """What differs between N intrusions."""

    way: IntArray
    """Number of the way in, shape (N,), as all below unless said otherwise. [-]"""
    order: IntArray
    """Numbers of the goals in the order they are gone for, shape (N, G). [-]"""
    pace: FloatArray
    """On the flat. [m/s]"""
    is_cautious: BoolArray
    stairs: FloatArray
    """Pace on stairs, as a share. [-]"""
    door: FloatArray
    """To open an inside door. [s]"""
    climb: FloatArray
    """To climb in. [s]"""
    search: FloatArray
    """At a target. [s]"""
    breaking: FloatArray
    """To break the control unit. [s]"""
    stay: FloatArray
    """In the house. [s]"""
    doors_otherwise: BoolArray
    """Whether inside doors stand as the household did not say."""
    room_c: FloatArray
    """Room temperature, one draw for all detectors. [deg C]"""
    since: FloatArray
    """Since movement detectors last signalled. [s]"""
    reach: FloatArray
    """Reach of each movement detector as a share of its sheet, shape (M, N). [-]"""
    walked: FloatArray
    """Walked before it notices, as a share of what is computed, shape (M, N). [-]"""
    tells: BoolArray
    """Whether each device at an opening tells of what it is there for, shape (C, N)."""
    radio: FloatArray
    """To the control unit. [s]"""
    sounder: FloatArray
    """From the alarm to a sounder being loud. [s]"""
    message: FloatArray
    """For a message to leave; infinite where no path works. [s]"""
    is_surely: BoolArray
    """Whether movement detectors notice as the design case takes it, and not by their zones."""


class Who(NamedTuple):
    """What the draws are keyed by: ids, never places in a list."""

    ways: Sequence[tuple[str, str]]
    """Opening and manner of each way in."""
    shares: Sequence[float]
    """Share of each opening, as often as it has manners. [-]"""
    goals: Sequence[str]
    """The control unit, if there is one, and the targets."""
    unit: int | None
    """Which goal is the control unit."""
    movement: Sequence[str]
    at_openings: Sequence[str]
    paths: frozenset[str]
    """Message paths: `broadband`, `mobile`; none told: of whatever sort."""


def drawn(streams: Streams, catalogue: Catalogue, who: Who, *, room: Figure, count: int) -> Inputs:
    """Draw the next intrusions.

    Parameters
    ----------
    streams : Streams
        Where the last ones left them.
    catalogue : Catalogue
        Figures.
    who : Who
        Keys of what is drawn for.
    room : Figure
        Room temperatures. [deg C]
    count : int
        How many.

    Returns
    -------
    Inputs
        Of `count` intrusions.
    """
    figure = catalogue.figure

    def happens(key: str, name: str) -> BoolArray:
        return streams.even(key, count) < figure(name).value

    def of(key: str, name: str) -> FloatArray:
        return streams.of(key, figure(name), count)

    cautious = happens("cautious", "share-cautious")
    pace = np.where(cautious, of("pace cautious", "pace-cautious"), of("pace", "pace-hurried"))
    tells = [happens(f"tells {name}", "chance-contact-tells") for name in who.at_openings]
    return Inputs(
        way=_ways(streams, who, glass=figure("share-through-glass").value, count=count),
        order=_orders(streams, who, first=figure("share-unit-first").value, count=count),
        pace=pace,
        is_cautious=cautious,
        stairs=of("pace on stairs", "stairs-share"),
        door=of("inside doors", "pass-door"),
        climb=of("climbing in", "climb-in"),
        search=of("search", "search-target"),
        breaking=of("break", "break-control-unit"),
        stay=of("stay", "stay"),
        doors_otherwise=~happens("door states", "share-doors-as-told"),
        room_c=streams.of("room", room, count),
        since=streams.stream("since movement").exponential(figure("since-movement").value, count),
        reach=_rows([of(f"reach {name}", "detector-reach") for name in who.movement], count),
        walked=_rows([of(f"walked {name}", "walked-to-notice") for name in who.movement], count),
        tells=np.array(tells, dtype=np.bool_).reshape(len(tells), count),
        radio=of("radio", "radio-delay"),
        sounder=of("sounder", "sounder-start"),
        message=messages(streams, catalogue, who.paths, count=count),
        is_surely=np.zeros(count, dtype=np.bool_),
    )


def _rows(columns: Sequence[FloatArray], count: int) -> FloatArray:
    return np.array(columns, dtype=np.float64).reshape(len(columns), count)


def _ways(streams: Streams, who: Who, *, glass: float, count: int) -> IntArray:
    """Each opening draws a waiting time by its share and the shortest wins: one more opening moves no other draw."""
    openings: dict[str, float] = {}
    for (opening, _), share in zip(who.ways, who.shares, strict=True):
        openings[opening] = share
    best, chosen = np.full(count, np.inf), np.zeros(count, dtype=np.int64)
    through = streams.even("through the glass", count) < glass
    number = {key: i for i, key in enumerate(who.ways)}
    for opening, share in sorted(openings.items()):
        wait = streams.stream(f"way {opening}").standard_exponential(count)
        if share <= 0.0:
            continue
        wait /= share
        manners = ("opened", "through the glass")
        found = [number[opening, manner] for manner in manners if (opening, manner) in number]
        first, second = found[0], found[-1]
        is_sooner = wait < best
        best[is_sooner] = wait[is_sooner]
        chosen[is_sooner] = np.where(through[is_sooner], second, first)
    return chosen


def _orders(streams: Streams, who: Who, *, first: float, count: int) -> IntArray:
    keys = np.array([streams.even(f"turn {name}", count) for name in who.goals])
    if who.unit is not None:
        keys[who.unit][streams.even("unit first", count) < first] = -1.0
    order: IntArray = keys.argsort(axis=0, kind="stable").T
    return np.ascontiguousarray(order)


def messages(streams: Streams, catalogue: Catalogue, paths: frozenset[str], *, count: int) -> FloatArray:
    """Draw how long messages take.

    Parameters
    ----------
    streams : Streams
        Of chance.
    catalogue : Catalogue
        Figures.
    paths : frozenset of str
        By broadband while it works, else by mobile data; by whatever there is where none is told.
    count : int
        How many.

    Returns
    -------
    ndarray, shape (count,)
        Infinite where no path works. [s]
    """
    if not paths:
        return streams.of("message", catalogue.figure("message-time"), count)
    is_up = streams.even("broadband up", count) < catalogue.figure("share-broadband-up").value
    by = {
        name: streams.of(f"message {name}", catalogue.figure(f"message-{name}"), count)
        for name in ("broadband", "mobile")
    }
    other = by["mobile"] if "mobile" in paths else np.full(count, np.inf)
    return np.where(is_up, by["broadband"], other) if "broadband" in paths else other


def picked(inputs: Inputs, rows: IntArray) -> Inputs:
    """Some of the intrusions."""
    across = {"reach", "walked", "tells"}
    return Inputs(
        **{
            name: value[:, rows] if name in across else value[rows]
            for name, value in inputs._asdict().items()
        }
    )


def design_values(catalogue: Catalogue) -> Mapping[str, float]:
    """What the design case takes for those inputs that are single numbers."""
    figure = catalogue.figure
    return {
        "pace": figure("pace-hurried").value,
        "stairs": figure("stairs-share").value,
        "door": figure("pass-door").value,
        "climb": figure("climb-in").value,
        "breaking": figure("break-control-unit").value,
        "radio": figure("radio-delay").value,
        "sounder": figure("sounder-start").value,
        # The slow path.
        "message": figure("message-time").high,
    }
