"""The plan of fitting: the order of work, a sheet for each device, and how far each may be moved."""

from __future__ import annotations

from wardwright.costing.tasks import new_devices
from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.record import Record
from wardwright.model.site import Site
from wardwright.questions.room_to_move import RoomToMove, room_to_move
from wardwright.works.fitting_order import FIXES_NOTHING, FittingStep, fitting_order
from wardwright.works.fixing_sheet import FixingSheet, fixing_sheet


class FitPlan(Record):
    """All that is needed on the day."""

    house: str
    steps: tuple[FittingStep, ...]
    sheets: tuple[FixingSheet, ...]
    """In the order of fitting."""
    moves: tuple[RoomToMove, ...]
    """In the same order; empty: not tried."""


def fit_plan(site: Site, catalogue: Catalogue, *, is_quick: bool = False) -> FitPlan:
    """Plan the fitting.

    Parameters
    ----------
    site : Site
        The design as it stands.
    catalogue : Catalogue
        Sheets, times and limits.
    is_quick : bool, default False
        Leave out how far each device may be moved: that is what takes time.

    Returns
    -------
    FitPlan
        Of what is to be fitted.

    Raises
    ------
    NotComputable
        If nothing is.
    """
    if not new_devices(site):
        raise NotComputable("no devices: nothing is to be fitted")
    steps = fitting_order(site, catalogue)
    placed = dict.fromkeys(one for step in steps if step.stage not in FIXES_NOTHING for one in step.devices)
    devices = [site.device(one) for one in placed]
    return FitPlan(
        house=site.name,
        steps=steps,
        sheets=tuple(fixing_sheet(site, catalogue, one) for one in devices),
        moves=() if is_quick else tuple(room_to_move(site, catalogue, one) for one in devices),
    )
