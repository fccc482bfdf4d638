"""The tests that must be repeated, in words and in walking order."""

from __future__ import annotations

from wardwright.documents.content.names import Names, names_of
from wardwright.documents.content.quantities import quantity, value_words, with_range
from wardwright.model.catalogue import Catalogue
from wardwright.model.record import Record
from wardwright.model.site import Site
from wardwright.questions.between_states import TestKind
from wardwright.questions.walking_round import RoundStop, WalkingRound
from wardwright.rules.pillows import pillows

TESTS: dict[TestKind, str] = {
    "view": "{of}: walk its edge, across and toward: it notices",
    "beyond view": "{of}: walk where it is to stay quiet, next door and past the window: it does",
    "opening": "{of}: open slowly and note the gap; slam and shake it: it stays quiet",
    "operation": "{of}: operate it as its sheet says: it does what it is for, and shows under its name",
    "shown": "{of}: set it off once: it shows under its name",
    "radio": "{of}: five readings of level and noise, doors shut",
    "sound": "{of}: read the level with doors shut",
    "entry": "{of}: come in with the slowest of the household, then by a wrong turn",
    "exit": "{of}: leave with the slowest of the household",
    "night trip": "{of}: trips at night with the part set, in the dark: nothing rings",
    "pet": "{of}: let it roam where it may be while detectors are watched: nothing rings",
    "picture": "{of}: walk to the named points, by day and by night",
    "message": "{of}: send each kind of message by each path, and time its arrival",
}
"""What to do for each test that is due."""
NO_WAY = "no way on foot leads there through the house"
NO_TESTS = "No test needs to be repeated"


class ToldTest(Record):
    """One test to repeat."""

    what: str
    """What to do, and of what."""
    why: str


class ToldStop(Record):
    """One place of the round."""

    number: int
    where: str
    """Storey."""
    walk: str
    """How long it takes from the stop before."""
    tests: tuple[ToldTest, ...]


class ToldRound(Record):
    """All tests, in walking order."""

    heading: str
    """How many tests, how long, in one sentence."""
    begins_at: str
    back: str
    """How long it takes from the last stop back to the beginning."""
    order: str
    """How good the order is."""
    stops: tuple[ToldStop, ...]


def told_round(found: WalkingRound, site: Site, catalogue: Catalogue) -> ToldRound:
    """Put a round of tests into words.

    Parameters
    ----------
    found : WalkingRound
        The round.
    site : Site
        The house as it is.
    catalogue : Catalogue
        For names.

    Returns
    -------
    ToldRound
        No stops where there is nothing to test.
    """
    names = plan_names(site, catalogue)
    stops = tuple(_stop(stop, number, names) for number, stop in enumerate(found.stops, start=1))
    return ToldRound(
        heading=_heading(found),
        begins_at=names.of(found.begins_at) if found.begins_at else "where you please",
        back=_seconds(found.back_s),
        order="the shortest order there is"
        if found.is_shortest
        else "a short order: with so many stops it is not known whether one is shorter",
        stops=stops,
    )


def plan_names(site: Site, catalogue: Catalogue) -> Names:
    """What people call things, pillows among them."""
    names = names_of(site, catalogue)
    return Names({**names.by_id, **{head.id: head.name for head in pillows(site)}}, site)


def _heading(found: WalkingRound) -> str:
    count = sum(len(stop.tests) for stop in found.stops)
    if not count:
        return NO_TESTS
    tests = quantity(count, "tests", 1.0)
    places = f"{len(found.stops)} place{'s' if len(found.stops) > 1 else ''}"
    return f"{tests} at {places}: {with_range(found.minutes)}, of which walking {value_words(found.walking)}"


def _stop(stop: RoundStop, number: int, names: Names) -> ToldStop:
    return ToldStop(
        number=number,
        where=names.of(stop.storey) if stop.storey else "",
        walk=NO_WAY if stop.walk_s is None else _seconds(stop.walk_s),
        tests=tuple(
            ToldTest(what=TESTS[one.kind].format(of=names.of(one.about)), why=one.why) for one in stop.tests
        ),
    )


def _seconds(value: float) -> str:
    return quantity(value, "s", 1.0)
