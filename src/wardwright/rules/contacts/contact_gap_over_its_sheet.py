"""CON101: an opening contact whose parts are farther apart than its sheet allows."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import contacts_elsewhere, opening_contacts
from wardwright.rules.registry import exactly, rule

SHARE_OF_LIMIT = 0.5
"""How much of the sheet's gap is used when it is set again, so that the door may still drop. [-] (common practice)"""
ROUNDING_M = 1e-6
"""Gaps closer to the limit than this are the limit. [m] (assumption)"""


@rule(
    code="CON101",
    name="contact-gap-over-its-sheet",
    since="0.1",
    stage="trial use",
    mark="derived",  # the limit is the device's own sheet
    severity="must mend",
    sources=(),
)
def contact_gap_over_its_sheet(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Opening contacts whose parts stand farther apart than their sheet allows.

    What it checks
        For each opening contact, the gap between magnet and contact with the leaf shut, against the widest gap
        on its own sheet.
    Why it matters
        Near or over the limit the contact opens by itself in wind, with the season, or when the door drops on its
        hinges. Faults that come and go are the hardest to find, and often cost several visits.
    How to put it right
        Bring the parts together with a spacer, to half of the sheet's gap or less, and measure again with the door
        pulled to its loosest shut position.
    What it cannot know
        How far the leaf will drop or shrink; steel round the parts, which shortens the gap that works; whether the
        parts are lined up.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for each contact over its limit, with the gap [m]; one of severity `not run` for each contact whose gap
        was not measured, or that is on no opening.

    Raises
    ------
    NotComputable
        If no opening has a contact.
    """
    this = contact_gap_over_its_sheet
    for device in contacts_elsewhere(site, catalogue):
        yield this.not_run(
            device.id,
            f"{device.name}: it is on no opening of the plan",
            cure="Say which door or window it is on",
            mends=(Mend(action="tell", subject=device.id, values=(("field", "mount"),)),),
        )
    for device, sheet, mount, opening in opening_contacts(site, catalogue):
        if mount.gap_m is None:
            yield this.not_run(
                device.id,
                f"{device.name}: its gap was not measured",
                cure="Measure the gap with the leaf shut and tell it",
                mends=(Mend(action="tell", subject=device.id, values=(("field", "gap_m"),)),),
            )
        elif mount.gap_m > sheet.gap_m + ROUNDING_M:
            yield this.finding(
                device.id,
                f"{device.name}: the gap at {opening.name} is wider than its sheet allows",
                cure="Bring the two parts together with a spacer, to half of the sheet's gap",
                estimate=exactly(mount.gap_m, "m", device.basis_of("mount")),
                limit=sheet.gap_m,
                mends=(
                    Mend(
                        action="change-mount",
                        subject=device.id,
                        values=(("gap_m", sheet.gap_m * SHARE_OF_LIMIT),),
                    ),
                ),
                related=(opening.id,),
            )
