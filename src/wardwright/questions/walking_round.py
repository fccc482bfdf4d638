"""The tests that are due, in the shortest walking order over the storeys, and how long all of it takes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from functools import lru_cache
from typing import NamedTuple

import numpy as np

from wardwright.errors import NotComputable
from wardwright.geometry.raster import FloatArray
from wardwright.model.catalogue import Catalogue, Figure
from wardwright.model.estimate import Estimate
from wardwright.model.record import Record
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.walking.from_site import (
    Paces,
    Route,
    Spot,
    fastest_route,
    premises_network,
)
from wardwright.physics.walking.round import EXACT_UP_TO, shortest_round
from wardwright.questions.between_states import DueTest, TestKind
from wardwright.questions.round_spots import round_begins_at, test_spots
from wardwright.trials.draws import Input, cases_of, estimate_of
from wardwright.trials.paces import walking_pace

SLEEPING: frozenset[TestKind] = frozenset({"view", "beyond view"})
"""Tests before which a movement detector that sleeps after a signal is to be left alone that long."""


class RoundStop(Record):
    """One place, and what is tested there."""

    tests: tuple[DueTest, ...]
    """In their order; several things may stand at one place."""
    walk_s: float | None
    """On foot from the stop before; None: no way on foot leads there through the house. [s]"""
    storey: str
    """Where one stands; empty where nobody knows."""


class WalkingRound(Record):
    """All tests in the order in which to walk to them."""

    begins_at: str
    """Id of the keypad, control unit or door where the round begins and ends; empty: the house has none."""
    stops: tuple[RoundStop, ...]
    back_s: float
    """On foot from the last stop back to the beginning. [s]"""
    is_shortest: bool
    """Whether no order is shorter; False: there are so many stops that a good one is all that is known."""
    minutes: Estimate
    """Testing, waiting for detectors that sleep, and walking. [min]"""
    walking: Estimate
    """Of that, walking. [min]"""
    sketches: tuple[Sketch, ...]
    """The walk, storey by storey, and each stop with its number."""


class _Place(NamedTuple):
    """One place to go to."""

    spot: Spot | None
    tests: tuple[DueTest, ...]


def walking_round(site: Site, catalogue: Catalogue, tests: Sequence[DueTest]) -> WalkingRound:
    """Put tests in the shortest walking order.

    Parameters
    ----------
    site : Site
        The house as it is.
    catalogue : Catalogue
        How fast people walk, and how long each test takes.
    tests : sequence of DueTest
        What is to be tested.

    Returns
    -------
    WalkingRound
        From the keypad, or else the control unit or an entry door, and back to it, at an ordinary walk with every
        door shut behind one. Places that no way on foot leads to come last.
    """
    spots = test_spots(site)
    by_place: dict[Spot | str, list[DueTest]] = {}
    for one in tests:
        by_place.setdefault(spots.get(one.about, one.about), []).append(one)
    places = [_Place(at if isinstance(at, Spot) else None, tuple(due)) for at, due in by_place.items()]
    paces = Paces(
        walking_pace(catalogue, "usual").value,
        catalogue.figure("stairs-share").value,
        catalogue.figure("pass-door").value,
    )
    begins_at = round_begins_at(site, catalogue)
    start = spots.get(begins_at)
    at = [start, *(one.spot for one in places)]
    reached, between = _times(site, at, paces=paces)
    # What is tested where the round begins comes first, and is no place to walk to.
    here = [i for i in reached[1:] if places[i - 1].spot == start]
    kept = [k for k, i in enumerate(reached) if i not in here]
    order = [reached[kept[k]] for k in shortest_round(between[np.ix_(kept, kept)])]
    legs = list(zip(order, [*order[1:], order[0]], strict=True)) if len(order) > 1 else []
    walked = [route for a, b in legs if (route := _leg(site, at[a], at[b], paces=paces)) is not None]
    stops = [_stop(places[i - 1], 0.0) for i in here]
    stops += [
        _stop(places[to - 1], float(route.clock[-1]))
        for (_, to), route in zip(legs, walked, strict=True)
        if to
    ]
    stops += [_stop(place, None) for i, place in enumerate(places, start=1) if i not in reached]
    on_foot_s = float(sum(route.clock[-1] for route in walked))
    minutes, walking = _minutes(site, catalogue, tests, on_foot_s=on_foot_s)
    return WalkingRound(
        begins_at=begins_at,
        stops=tuple(stops),
        back_s=float(walked[-1].clock[-1]) if walked else 0.0,
        is_shortest=len(order) - 1 <= EXACT_UP_TO,
        minutes=minutes,
        walking=walking,
        sketches=(*_walk(walked), *_numbers(places, [*here, *(to for _, to in legs if to)])),
    )


def _times(site: Site, spots: Sequence[Spot | None], *, paces: Paces) -> tuple[list[int], FloatArray]:
    """Numbers of the places that can be walked to from the first, itself before them, and the times between them."""
    first = spots[0]
    if first is None:
        return [0], np.zeros((1, 1))
    near = {0: first} | {
        i: spot
        for i, spot in enumerate(spots)
        if i and spot is not None and _way(site.bare, first, spot, paces=paces)
    }
    numbers = list(near)
    times = np.zeros((len(numbers), len(numbers)))
    for row, a in enumerate(numbers):
        for column, b in enumerate(numbers[:row]):
            # Doors and stairs take as long one way as the other.
            route = _way(site.bare, near[b], near[a], paces=paces)
            times[row, column] = times[column, row] = np.inf if route is None else route.clock[-1]
    return numbers, times


@lru_cache(maxsize=8192)
def _way(house: Site, a: Spot, b: Spot, *, paces: Paces) -> Route | None:
    """Remembered by the house: an edit of one device asks for the ways to that one alone."""
    try:
        return fastest_route(premises_network(house), a, b, paces=paces)
    except NotComputable:
        return None


def _leg(site: Site, a: Spot | None, b: Spot | None, *, paces: Paces) -> Route | None:
    return None if a is None or b is None else _way(site.bare, a, b, paces=paces)


def _stop(place: _Place, walk_s: float | None) -> RoundStop:
    return RoundStop(
        tests=place.tests,
        walk_s=walk_s,
        storey="" if place.spot is None else place.spot.storey,
    )


def _minutes(
    site: Site, catalogue: Catalogue, tests: Sequence[DueTest], *, on_foot_s: float
) -> tuple[Estimate, Estimate]:
    counts = Counter(one.kind.replace(" ", "-") for one in tests)
    figures = {kind: catalogue.figure(f"test-{kind}") for kind in counts}
    pace = walking_pace(catalogue, "usual")
    inputs = [_input(figure) for figure in figures.values()]
    cases = cases_of((*inputs, _input(pace)))
    walking: FloatArray = on_foot_s / 60.0 * pace.value / cases.rows[f"test/{pace.id}"]
    asleep = sum(_sleep_s(site, catalogue, one) for one in tests) / 60.0
    total = walking + asleep
    for kind, count in counts.items():
        total = total + count * cases.rows[f"test/{figures[kind].id}"]
    return estimate_of(total, cases, unit="min"), estimate_of(walking, cases, unit="min")


def _input(figure: Figure) -> Input:
    return Input(f"test/{figure.id}", figure.name, figure, "default")


def _sleep_s(site: Site, catalogue: Catalogue, test: DueTest) -> float:
    if test.kind not in SLEEPING:
        return 0.0
    movement = catalogue.sheet(site.device(test.about).sheet).movement
    return 0.0 if movement is None else movement.sleep_s


def _walk(routes: Iterable[Route]) -> list[Sketch]:
    """The walk as one line for each stay on a storey, with the clock running on."""
    found: list[Sketch] = []
    since = 0.0
    for route in routes:
        begun = 0
        for k in range(1, len(route.points) + 1):
            if k < len(route.points) and route.storeys[k] == route.storeys[begun]:
                continue
            if k - begun > 1:
                found.append(
                    Sketch(
                        role="walk",
                        storey=route.storeys[begun],
                        points=tuple((float(x), float(y)) for x, y in route.points[begun:k]),
                        times_s=tuple(float(since + t) for t in route.clock[begun:k]),
                    )
                )
            begun = k
        since += float(route.clock[-1])
    return found


def _numbers(places: Sequence[_Place], order: Sequence[int]) -> list[Sketch]:
    found = []
    for number, place in enumerate((places[i - 1] for i in order), start=1):
        if place.spot is not None:
            at = (place.spot.x, place.spot.y)
            found.append(Sketch(role="goal", storey=place.spot.storey, points=(at,), label=str(number)))
    return found
