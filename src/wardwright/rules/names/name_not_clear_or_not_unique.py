"""NAM101: a zone's name that nobody can act on."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.programme import Zone
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend, Severity
from wardwright.rules.kit import devices_of
from wardwright.rules.registry import rule
from wardwright.rules.zone_names import as_shown, display_length, faults_of_words, proposed_names

NAMES_A_PERSON = "names a person"
"""How the fault begins that keyfobs may have: each has one user."""
USUAL_LENGTH = 16
"""How long a computed name may be where no control unit's sheet says. [-] (common practice)"""


@rule(
    code="NAM101",
    name="name-not-clear-or-not-unique",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def name_not_clear_or_not_unique(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Zone names that do not say where, name a person, or are the same as another.

    What it checks
        The name of each zone: whether another zone has the same; and as the control unit's display shows it,
        whether it is only a kind or a number, whether it names somebody of the household, whether any word of it is
        a place. Keyfobs may have their user's name.
    Why it matters
        A keyholder at night, or a voice on the telephone, has only this name. With an unclear one the wrong room is
        searched while the noise goes on; with a person's name a stranger does not know which room is meant, and
        learns who sleeps there.
    How to put it right
        Name it floor, room, thing, such as `First landing movement`. The finding carries such a name that fits the
        display and that no other zone has.
    What it cannot know
        What the family itself calls a room, unless the plan does; names spoken by a receiving centre from its own
        list.

    Parameters
    ----------
    site : Site
        The house, its people, its zones.
    catalogue : Catalogue
        The control unit's sheet says how long a name may be.

    Yields
    ------
    Finding
        One for each zone with a fault, with a better name where the room is known: `must mend` where two zones have
        the same, else `advise`. One of severity `not run` for the site where no sheet says how long a name may be.

    Raises
    ------
    NotComputable
        If no zone is programmed.
    """
    this = name_not_clear_or_not_unique
    if not site.zones:
        raise NotComputable("no zone is programmed", cure="Add the zones and their behaviours")
    length = display_length(site, catalogue)
    if length is None:
        yield this.not_run(
            site.name,
            "no control unit's sheet says how many letters a name may have: names were compared at full length",
            cure="Add the control unit",
        )
    zones = sorted(site.zones, key=lambda zone: (zone.number, zone.id))
    shown = {zone.id: as_shown(zone.name, length) for zone in zones}
    whole = {zone.id: as_shown(zone.name, None) for zone in zones}
    taken = set(shown.values())
    for zone in zones:
        same = [other for other in zones if other.id != zone.id and whole[other.id] == whole[zone.id]]
        faults = [
            fault
            for fault in faults_of_words(site, zone.name, length=length)
            if not (fault.startswith(NAMES_A_PERSON) and _is_keyfob(site, catalogue, zone))
        ]
        severity: Severity = this.severity
        if same:
            severity = "must mend"
            faults.insert(0, "is the same as that of " + ", ".join(f"zone {o.number}" for o in same))
        if not faults:
            continue
        better = better_name(site, catalogue, zone=zone, length=length, taken=taken)
        if better is not None:
            taken.add(as_shown(better, length))  # no other zone is to be given it as well
        yield this.finding(
            zone.id,
            f"zone {zone.number}, '{zone.name}': its name " + " and ".join(faults),
            cure="Name it floor, room, thing" + ("" if better is None else f": {better}"),
            severity=severity,
            mends=()
            if better is None
            else (Mend(action="rename", subject=zone.id, values=(("name", better),)),),
            related=tuple(other.id for other in same),
        )


def better_name(
    site: Site, catalogue: Catalogue, *, zone: Zone, length: int | None, taken: set[str]
) -> str | None:
    """The fullest proposed name without a fault that no zone shows yet; None if there is none."""
    most = USUAL_LENGTH if length is None else length
    for name in proposed_names(site, catalogue, zone=zone, length=most):
        if as_shown(name, length) not in taken and not faults_of_words(site, name, length=length):
            return name
    return None


def _is_keyfob(site: Site, catalogue: Catalogue, zone: Zone) -> bool:
    """Whether a zone is of keyfobs only."""
    keyfobs = {device.id for device, _ in devices_of(site, catalogue, "keyfob")}
    return bool(zone.devices) and set(zone.devices) <= keyfobs
