"""SND106: an outside sounder that is too quiet wherever somebody might hear it."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NoneOfAKind, NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.physics.sound.house import OUTSIDE
from wardwright.rules.finding import Finding
from wardwright.rules.limits import limit_for, severity_of
from wardwright.rules.outside_ears import heard_outside, outside_ears
from wardwright.rules.registry import rule
from wardwright.rules.sound_heard import sounders

ELSEWHERE = frozenset({"boundary"})
"""Lines at which nobody lives or passes: a boundary alone makes no hearer."""


@rule(
    code="SND106",
    name="outside-sounder-heard-by-nobody",
    since="0.1",
    stage="trial use",
    mark="assumption",
    severity="advise",
    sources=("own",),
    follows="nothing",
)
def outside_sounder_heard_by_nobody(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Outside sounders that are likely too quiet at the street and at every neighbour's house.

    What it checks
        For each sounder outside: its likely level at the road and round each building of a neighbour that is drawn,
        against 60 dBA, a figure of our own.
    Why it matters
        A sounder outside is there to be noticed. On the side that nobody lives or passes on it tells the intruder
        only that an alarm is there.
    How to put it right
        Move it to the side of the street or of the nearest neighbour, or add another there.
    What it cannot know
        Who is at home and who cares; traffic, wind and rain; trees and houses that throw sound back.

    Parameters
    ----------
    site : Site
        The house, its ground and its sounders.
    catalogue : Catalogue
        What they put out, and the figure.

    Yields
    ------
    Finding
        One for each such sounder, with the loudest level that anybody gets [dBA].

    Raises
    ------
    NotComputable
        If neither a road nor a neighbour's building is drawn.
    NoneOfAKind
        If there is no sounder outside.
    """
    this = outside_sounder_heard_by_nobody
    every = [one for one in sounders(site, catalogue, ("sounder",)) if one.room == OUTSIDE]
    if not every:
        raise NoneOfAKind("no sounder outside", kind="sounder", cure="Add the sounders that are planned")
    if all(place.id in ELSEWHERE for place in outside_ears(site)):
        raise NotComputable(
            "neither a road nor a neighbour's building is drawn",
            cure="Tell where the road and the neighbours are",
        )
    limit = limit_for(catalogue, "heard-outside", site)
    for one in every:
        heard = [there for there in heard_outside(site, catalogue, (one,)) if there.place.id not in ELSEWHERE]
        levels = [(there.level, there.place.name) for there in heard if there.level is not None]
        best = max(levels, key=lambda pair: pair[0].value, default=None)
        if best is not None and best[0].value >= limit.value:
            continue
        place = one.place
        told = "nobody hears it" if best is None else f"at most {best[0].value:.0f} dBA, at the {best[1]}"
        yield this.finding(
            one.device.id,
            f"{one.device.name}: {told}, under {limit.value:g} dBA",
            cure="Move it to the side of the street or of the nearest neighbour, or add another there",
            severity=severity_of(limit),
            estimate=None if best is None else best[0],
            limit=limit.value,
            sketches=(
                Sketch(
                    role="fault", storey=place.storey, points=((place.x_m, place.y_m),), label=one.device.name
                ),
            ),
        )
