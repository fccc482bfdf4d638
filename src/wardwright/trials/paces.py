"""An intruder's paces."""

from __future__ import annotations

from wardwright.model.catalogue import Catalogue
from wardwright.physics.walking.from_site import Paces


def paces_of(catalogue: Catalogue) -> Paces:
    """A hurried intruder's likely paces: for choosing the fastest way, and for the design case."""
    return Paces(
        catalogue.figure("pace-hurried").value,
        catalogue.figure("stairs-share").value,
        catalogue.figure("pass-door").value,
    )
