"""The walk-test plan: every test of a design, in the shortest walking order, with the walks past each detector."""

from __future__ import annotations

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.record import Record
from wardwright.model.site import Site
from wardwright.questions import what_it_sees
from wardwright.questions.compared import State
from wardwright.questions.table import ask
from wardwright.questions.tests_due import ASKED, tests_due
from wardwright.questions.walk_past import WalkTest
from wardwright.questions.walking_round import WalkingRound, walking_round
from wardwright.questions.walks_by_view import walks_by_view


class ProvingPlan(Record):
    """All that is to be tested before a system is handed over."""

    house: str
    round: WalkingRound
    """Every test, where it is done, in the shortest walking order."""
    walks: tuple[WalkTest, ...]
    """For the movement detectors, in the order of the round."""
    without_walks: tuple[str, ...] = ()
    """Ids of the movement detectors that no walk could be laid out for: what they see is not known."""


def proving_plan(site: Site, catalogue: Catalogue) -> ProvingPlan:
    """Plan the tests.

    Parameters
    ----------
    site : Site
        The design, or the house as it was fitted.
    catalogue : Catalogue
        Sheets and figures.

    Returns
    -------
    ProvingPlan
        What would be due if every device were new: what was there before is tested with the rest.

    Raises
    ------
    NotComputable
        If there is no device.
    """
    if not site.devices:
        raise NotComputable("no devices: there is nothing to test")
    # All is new against the same house with nothing in it: so no test is listed in two places.
    # No finding says what is due.
    bare = site.model_copy(update={"devices": (), "zones": ()})
    before, after = (State(one, ask(one, catalogue, ASKED), ()) for one in (bare, site))
    found = walking_round(site, catalogue, tests_due(before, after, catalogue))
    seen = {one.subject_id: one for one in after.answers if one.question == what_it_sees.NUMBER}
    order = [test.about for stop in found.stops for test in stop.tests if test.kind == "view"]
    walks = {one: walks_by_view(site, catalogue, site.device(one), seen=seen.get(one)) for one in order}
    detectors = [one.id for one in site.devices if catalogue.sheet(one.sheet).kind == "movement-detector"]
    return ProvingPlan(
        house=site.name,
        round=found,
        walks=tuple(walk for one in order for walk in walks[one]),
        without_walks=tuple(sorted(one for one in detectors if not walks.get(one))),
    )
