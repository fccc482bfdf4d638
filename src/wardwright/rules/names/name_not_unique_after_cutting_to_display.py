"""NAM102: two names that the display cuts to one."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.names.name_not_clear_or_not_unique import better_name
from wardwright.rules.registry import rule
from wardwright.rules.zone_names import as_shown, display_length


@rule(
    code="NAM102",
    name="name-not-unique-after-cutting-to-display",
    since="0.1",
    stage="trial use",
    mark="derived",  # the limit is the control unit's own sheet
    severity="must mend",
    sources=(),
)
def name_not_unique_after_cutting_to_display(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Zone names that differ, but not within the letters that the display has.

    What it checks
        The names of the zones, cut to the letters that the control unit's sheet gives a name, capitals and spare
        spaces apart: whether two that differ in full are then the same.
    Why it matters
        On paper the zones are told apart, on the display at night they are not: somebody searches the wrong room.
    How to put it right
        Put what tells them apart first, or shorten the rest. The finding carries a name that fits and that no other
        zone shows.
    What it cannot know
        Displays that scroll; names that a receiving centre keeps in its own list.

    Parameters
    ----------
    site : Site
        The house and its zones.
    catalogue : Catalogue
        The control unit's sheet says how long a name may be.

    Yields
    ------
    Finding
        One for each zone whose name is cut to that of another.

    Raises
    ------
    NotComputable
        If no zone is programmed, or no control unit's sheet says how many letters a name has.
    """
    this = name_not_unique_after_cutting_to_display
    if not site.zones:
        raise NotComputable("no zone is programmed", cure="Add the zones and their behaviours")
    length = display_length(site, catalogue)
    if length is None:
        raise NotComputable(
            "no control unit's sheet says how many letters a name may have", cure="Add the control unit"
        )
    zones = sorted(site.zones, key=lambda zone: (zone.number, zone.id))
    whole = {zone.id: as_shown(zone.name, None) for zone in zones}
    shown = {zone.id: as_shown(zone.name, length) for zone in zones}
    taken = set(shown.values())
    for zone in zones:
        same = [
            other
            for other in zones
            if shown[other.id] == shown[zone.id] and whole[other.id] != whole[zone.id]
        ]
        if not same:
            continue
        better = better_name(site, catalogue, zone=zone, length=length, taken=taken)
        if better is not None:
            taken.add(as_shown(better, length))
        yield this.finding(
            zone.id,
            f"zone {zone.number}, '{zone.name}': the display cuts it to '{zone.name[:length].rstrip()}', as "
            + ", ".join(f"zone {other.number}" for other in same),
            cure="Put what tells them apart first" + ("" if better is None else f": {better}"),
            mends=()
            if better is None
            else (Mend(action="rename", subject=zone.id, values=(("name", better),)),),
            related=tuple(other.id for other in same),
        )
