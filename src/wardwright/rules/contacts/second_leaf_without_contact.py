"""CON105: a door of two leaves with a contact on one of them only."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.opening import Opening
from wardwright.model.site import Site
from wardwright.rules.contacts.electronics_on_leaf_of_outward_opening import TURNING_HINGES
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import opening_contacts
from wardwright.rules.registry import exactly, rule

WIDE_M = 1.4
"""A turning door or window at least this wide has more than one leaf. [m] (assumption)"""


@rule(
    code="CON105",
    name="second-leaf-without-contact",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def second_leaf_without_contact(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Doors and windows of two turning leaves that have fewer contacts than leaves.

    What it checks
        For each door or window with a contact whose leaves turn: the number of its leaves against the number of its
        contacts.
    Why it matters
        The second leaf is held by bolts at top and bottom that are often left undone. Whoever opens it steps in
        beside a contact that is still closed.
    How to put it right
        Put a contact on each leaf; two wired in line make one zone.
    What it cannot know
        A second leaf that is screwed shut; two contacts that are drawn on an opening but are both on one leaf;
        folding leaves that only open after the first.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each such opening, with its contacts and its leaves [-]; one of severity `not run` for each wide
        opening of which nobody told how many leaves it has.

    Raises
    ------
    NotComputable
        If no opening has a contact.
    """
    this = second_leaf_without_contact
    on: dict[str, tuple[Opening, list[Device]]] = {}
    for device, _, _, opening in opening_contacts(site, catalogue):
        on.setdefault(opening.id, (opening, []))[1].append(device)
    for opening, devices in on.values():
        if opening.hinge not in TURNING_HINGES or opening.kind == "garage-door":
            continue
        if opening.basis_of("leaves") == "default" and opening.width_m >= WIDE_M and len(devices) < 2:
            yield this.not_run(
                opening.id,
                f"Nobody told how many leaves {opening.name} has, which is {opening.width_m:g} m wide",
                cure="Tell the number of its leaves",
                mends=(Mend(action="tell", subject=opening.id, values=(("field", "leaves"),)),),
            )
        elif opening.leaves == 2 and len(devices) < opening.leaves:
            yield this.finding(
                opening.id,
                f"{opening.name}: it has two leaves and one contact",
                cure="Put a contact on the other leaf too",
                estimate=exactly(float(len(devices)), "-", opening.basis_of("leaves")),
                limit=float(opening.leaves),
                mends=(Mend(action="add-device", subject=opening.id, values=(("sheet", devices[0].sheet),)),),
                related=tuple(device.id for device in devices),
            )
