"""NAM103: a name says left or right, and nobody knows from where."""

from __future__ import annotations

import re
from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import OpeningMount
from wardwright.model.opening import Opening
from wardwright.model.placement import direction, sides_of_opening
from wardwright.model.programme import Zone
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.registry import rule

SIDE_WORD = re.compile(r"\b(left|right|l|r)\b", re.IGNORECASE)
"""What says a side in a name, whole or as one letter."""


@rule(
    code="NAM103",
    name="left-or-right-without-convention",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def left_or_right_without_convention(site: Site, catalogue: Catalogue) -> Iterator[Finding]:  # noqa: ARG001 - the form of a check
    """Zone names that say left or right against the convention of the programme.

    What it checks
        For each zone on one door or window whose name says left, right, L or R: where that opening lies among those
        of its kind in the same wall of the same room, for somebody who stands where the programme says, inside or
        outside, and faces it.
    Why it matters
        Left from inside is right from outside. Whoever looks for the open window in the dark goes to the wrong one,
        and the fitter opens the wrong contact a year later.
    How to put it right
        Say on the programming sheet from where left and right are seen, and rename what does not fit. The finding
        carries the name that does.
    What it cannot know
        Which leaf of a pair is meant; names that mean a side of the house.

    Parameters
    ----------
    site : Site
        The house, its zones and the programme's convention.
    catalogue : Catalogue
        Not used.

    Yields
    ------
    Finding
        One for each zone whose name says the wrong side; one of severity `not run` for each whose opening has no
        other beside it, or stands in the middle of several.

    Raises
    ------
    NotComputable
        If no zone is programmed.
    """
    this = left_or_right_without_convention
    if not site.zones:
        raise NotComputable("no zone is programmed", cure="Add the zones and their behaviours")
    seen_from = site.programme.left_and_right_from
    for zone in sorted(site.zones, key=lambda one: (one.number, one.id)):
        said, opening = SIDE_WORD.search(zone.name), _opening(site, zone)
        if said is None or opening is None:
            continue
        side = _side(site, opening, is_from_inside=seen_from == "inside")
        if side is None:
            yield this.not_run(
                zone.id,
                f"zone {zone.number}, '{zone.name}': nothing beside {opening.name} tells its left from its right",
                cure="Name it by what stands beside it, or draw the openings beside it",
            )
        elif not side.startswith(said.group().casefold()[0]):
            better = zone.name[: said.start()] + _like(said.group(), side) + zone.name[said.end() :]
            yield this.finding(
                zone.id,
                f"zone {zone.number}, '{zone.name}': seen from {seen_from}, {opening.name} is the {side} one",
                cure=f"Name it {better}",
                mends=(Mend(action="rename", subject=zone.id, values=(("name", better),)),),
                related=(opening.id,),
            )


def _opening(site: Site, zone: Zone) -> Opening | None:
    """The one opening that a zone's devices are on."""
    known = {device.id: device.mount for device in site.devices}
    mounts = [known[name] for name in zone.devices if name in known]
    names = {mount.opening for mount in mounts if isinstance(mount, OpeningMount)}
    return site.opening(names.pop()) if len(names) == 1 else None


def _side(site: Site, opening: Opening, *, is_from_inside: bool) -> str | None:
    """Left or right among the openings of its kind in its wall; None in the middle, or alone."""
    wall = site.wall(opening.wall)
    sides = sides_of_opening(site, opening)
    ours = [side is not None and site.space(side).is_protected for side in sides]
    if not any(ours):
        return None
    beside = [
        one
        for one in site.openings
        if one.wall == opening.wall and one.kind == opening.kind and sides_of_opening(site, one) == sides
    ]
    if len(beside) < 2 or direction(wall.line_m)[2] == 0.0:
        return None
    order = sorted(beside, key=lambda one: (one.offset_m, one.id))
    place = order.index(opening)
    # Somebody in the room on the left of the wall's line, who faces it, has the line's far end on the left.
    if ours[0] == is_from_inside:
        place = len(order) - 1 - place
    if 2 * place == len(order) - 1:
        return None
    return "left" if 2 * place < len(order) - 1 else "right"


def _like(said: str, side: str) -> str:
    """A side written as the name wrote the other: one letter or a word, capitals or not."""
    text = side[0] if len(said) == 1 else side
    if said.isupper():
        return text.upper()
    return text.capitalize() if said[0].isupper() else text
