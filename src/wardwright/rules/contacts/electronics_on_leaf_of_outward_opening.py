"""CON102: a contact's electronics that swing out into the weather."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import opening_contacts
from wardwright.rules.outdoors import outdoor_side
from wardwright.rules.registry import rule

TURNING_HINGES = ("start", "end", "top", "bottom")
"""Leaves that leave the frame when they open."""


@rule(
    code="CON102",
    name="electronics-on-leaf-of-outward-opening",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own",),
)
def electronics_on_leaf_of_outward_opening(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Contacts with their electronics on a leaf that opens outward, though their sheet is for indoors.

    What it checks
        For each opening contact that is not for outdoors: whether the part with the electronics is on the leaf of a
        door or window to the outside that turns outward.
    Why it matters
        Each time the leaf stands open the electronics are out in rain, frost and sun. Cell and board fail early,
        and the cell's lid faces the weather.
    How to put it right
        Change the parts over: electronics on the frame inside, magnet on the leaf. Otherwise use a contact whose
        sheet is for outdoors.
    What it cannot know
        A porch or deep eaves that keep the leaf dry; an outside that is a covered yard nobody drew.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each such contact; one of severity `not run` where nobody told which way the leaf opens.

    Raises
    ------
    NotComputable
        If no opening has a contact.
    """
    this = electronics_on_leaf_of_outward_opening
    for device, sheet, mount, opening in opening_contacts(site, catalogue):
        outside = outdoor_side(site, opening)
        if mount.electronics_on == "frame" or sheet.is_for_outdoors or outside is None:
            continue
        if opening.hinge not in TURNING_HINGES or opening.swing == "none":
            continue
        if opening.basis_of("swing") == "default":
            yield this.not_run(
                device.id,
                f"{device.name}: nobody told which way {opening.name} opens",
                cure="Tell the side it opens to",
                mends=(Mend(action="tell", subject=opening.id, values=(("field", "swing"),)),),
            )
        elif opening.swing == outside:
            guessed = ", as was guessed" if opening.basis_of("swing") == "guessed" else ""
            yield this.finding(
                device.id,
                f"{device.name}: its electronics are on the leaf of {opening.name}, which opens outward{guessed},"
                " and its sheet is for indoors",
                cure="Put the electronics on the frame and the magnet on the leaf, or use a contact for outdoors",
                mends=(
                    Mend(action="change-mount", subject=device.id, values=(("electronics_on", "frame"),)),
                ),
                related=(opening.id,),
            )
