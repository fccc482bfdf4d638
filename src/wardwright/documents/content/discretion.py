"""Names that tell where the control unit or a keyfob is, kept out of the copies that must not say it."""

from __future__ import annotations

from wardwright.documents.content.schedule import sheet_of
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, DeviceKind, kind_words
from wardwright.model.site import Site

WITHHELD: tuple[DeviceKind, ...] = (
    "control-unit", "transmitter", "router", "repeater", "keyfob", "hold-up-button",
)  # fmt: skip
"""Kinds whose place is the fitter's alone: whoever breaks them stops the message, whoever finds a keyfob unsets the
alarm; and a keyfob may have its user's name. A hold-up button is for whoever is threatened, perhaps by somebody of
the house."""
NO_NAME = "name in the fitter\u2019s record"


def withheld(site: Site, catalogue: Catalogue) -> frozenset[str]:
    """Ids of the devices whose place is not told."""
    sheets = {device.id: sheet_of(catalogue, device) for device in site.devices}
    return frozenset(
        device for device, sheet in sheets.items() if sheet is not None and sheet.kind in WITHHELD
    )


def discreet(name: str, site: Site, catalogue: Catalogue) -> str:
    """A name, or that it is not told: where it holds that of a device whose place is withheld, or of its kind.

    Parameters
    ----------
    name : str
        Of an opening, a room, a device or a zone.
    site, catalogue : Site, Catalogue
        Say which devices are withheld.

    Returns
    -------
    str
        The name itself where it gives nothing away.
    """
    hidden = withheld(site, catalogue)
    lowered = name.casefold()
    telling = [device.name.casefold() for device in site.devices if device.id in hidden]
    telling += [kind_words(kind) for kind in WITHHELD]
    return NO_NAME if any(words in lowered for words in telling if words) else name


def discreet_name(device: Device, site: Site, catalogue: Catalogue) -> str:
    """What a device is called outside the fitter\u2019s record: its kind, where its name or its place is not told."""
    name, sheet = discreet(device.name, site, catalogue), sheet_of(catalogue, device)
    is_hidden = name == NO_NAME or device.id in withheld(site, catalogue)
    return kind_words(sheet.kind) if is_hidden and sheet is not None else name
