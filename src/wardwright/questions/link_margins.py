"""The margins of the radio links, where they are known: the one place where the radio engine's answer is taken in."""

from __future__ import annotations

from collections.abc import Mapping

from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.trials.cell_lives import Margin


def link_margins(site: Site, catalogue: Catalogue) -> Mapping[str, Margin]:
    """How far each device's link is above what it needs.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        Sheets.

    Returns
    -------
    mapping of str to Margin
        By the devices' ids; a device that is not there has no margin that is known, and a default of sendings counts.
    """
    del site, catalogue  # no link is worked out yet
    return {}
