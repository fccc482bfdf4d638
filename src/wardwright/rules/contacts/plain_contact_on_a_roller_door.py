"""CON103: a contact for ordinary leaves on a door that rolls up."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import opening_contacts
from wardwright.rules.registry import rule


@rule(
    code="CON103",
    name="plain-contact-on-a-roller-door",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def plain_contact_on_a_roller_door(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Contacts made for ordinary leaves on a garage door that rolls or swings up.

    What it checks
        For each contact on a garage door that opens upward: whether its sheet is for roller doors.
    Why it matters
        Such a door never stops twice in the same place, rattles in wind and bends when a car touches it. A contact
        with a small gap rings for all of that, and its magnet is torn off sooner or later.
    How to put it right
        Use a contact for roller doors, on the floor or the guide, with armoured lead and a wide gap.
    What it cannot know
        Whether the door is rigid and well guided; an older name for a door that opens sideways.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each such contact; one of severity `not run` where nobody told how the garage door opens.

    Raises
    ------
    NotComputable
        If no opening has a contact.
    """
    this = plain_contact_on_a_roller_door
    for device, sheet, _, opening in opening_contacts(site, catalogue):
        if opening.kind != "garage-door" or sheet.form == "roller-door":
            continue
        if opening.basis_of("hinge") == "default":
            yield this.not_run(
                device.id,
                f"{device.name}: nobody told how {opening.name} opens",
                cure="Tell whether it rolls or swings up, slides, or turns at a side",
                mends=(Mend(action="tell", subject=opening.id, values=(("field", "hinge"),)),),
            )
        elif opening.hinge == "top":
            better = _for_roller_doors(catalogue)
            yield this.finding(
                device.id,
                f"{device.name}: {opening.name} opens upward, and the contact's sheet is for ordinary leaves",
                cure="Use a contact for roller doors",
                mends=()
                if better is None
                else (Mend(action="replace-device", subject=device.id, values=(("sheet", better.id),)),),
                related=(opening.id,),
            )


def _for_roller_doors(catalogue: Catalogue) -> DeviceSheet | None:
    """The contact for roller doors with the widest gap; None if the catalogue has none."""
    found = [
        (-sheet.contact.gap_m, sheet.id, sheet)
        for sheet in catalogue.sheets
        if sheet.contact is not None and sheet.contact.form == "roller-door"
    ]
    return min(found)[2] if found else None
