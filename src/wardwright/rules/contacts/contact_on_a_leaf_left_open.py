"""CON104: a contact on a leaf that stands open while the alarm is set."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.opening import Opening
from wardwright.model.site import Site
from wardwright.rules.finding import Finding
from wardwright.rules.kit import FULL_SET, opening_contacts
from wardwright.rules.registry import Rule, rule


@rule(
    code="CON104",
    name="contact-on-a-leaf-left-open",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def contact_on_a_leaf_left_open(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Contacts on doors and windows that usually stand open or ajar while the alarm is set.

    What it checks
        For each contact that is active when everybody is out, or in a part set: how its leaf usually stands then,
        by day or at night.
    Why it matters
        Such a zone has setting refused evening after evening, or it is left out each time. People then stop setting,
        or sleep with a hole in the perimeter that they believe is closed.
    How to put it right
        Agree that it is shut for setting, take the zone out of the part in which it is left open, or watch the
        opening otherwise: a shock detector on its frame, a movement detector in the room.
    What it cannot know
        What the household does on warm nights; a window catch that holds it ajar within the contact's gap.

    Parameters
    ----------
    site : Site
        The house, its devices, zones and programme.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each such contact, without a computed mend: the household decides. One of severity `not run` that
        names the leaves of which nobody told how they stand.

    Raises
    ------
    NotComputable
        If no opening has a contact.
    """
    this = contact_on_a_leaf_left_open
    part_set = {part.id for part in site.parts} - {FULL_SET}
    untold: dict[str, Opening] = {}
    for device, _, _, opening in opening_contacts(site, catalogue):
        parts = {part for zone in site.zones if device.id in zone.devices for part in zone.parts}
        states = {}
        if not parts or FULL_SET in parts:
            states["set"] = ("habit", opening.habit)
        if parts & part_set:
            states["part set"] = ("habit_night", opening.habit_night)
        left = {state: stands for state, (_, stands) in states.items() if stands != "shut"}
        if any(opening.basis_of(field) == "default" for field, _ in states.values()):
            untold[opening.id] = opening
        if left:
            follows = (
                "setting is then refused"
                if site.programme.if_open_when_setting == "refuse"
                else "it is then left out"
            )
            how = " and ".join(f"{stands} when the alarm is {state}" for state, stands in left.items())
            yield this.finding(
                device.id,
                f"{device.name}: {opening.name} usually stands {how}; {follows}",
                cure="Agree that it is shut for setting, take the zone out of that part, or watch it otherwise",
                related=(opening.id,),
            )
    if untold:
        yield _untold(this, site, untold)


def _untold(this: Rule, site: Site, untold: dict[str, Opening]) -> Finding:
    names = sorted(opening.name for opening in untold.values())
    return this.not_run(
        site.name,
        f"Nobody told whether {' or '.join(names)} is shut when the alarm is set",
        cure="Tell how each leaf with a contact usually stands, by day and at night",
    )
