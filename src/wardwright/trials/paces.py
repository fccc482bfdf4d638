"""An intruder's paces: the likely ones, and those of the design case."""

from __future__ import annotations

from wardwright.model.catalogue import Catalogue
from wardwright.physics.walking.from_site import Paces


def paces_of(catalogue: Catalogue) -> Paces:
    """An intruder's likely paces, for choosing the fastest way."""
    return Paces(
        catalogue.figure("pace-hurried").value,
        catalogue.figure("stairs-share").value,
        catalogue.figure("pass-door").value,
    )


def quickest_paces(catalogue: Catalogue) -> Paces:
    """The paces of the design case: hurried at the high end, doors at the low end."""
    return Paces(
        catalogue.figure("pace-hurried").high,
        catalogue.figure("stairs-share").high,
        catalogue.figure("pass-door").low,
    )
