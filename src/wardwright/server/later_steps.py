"""The order of fitting and the round of tests of an open job, and what one of its tests draws on the plan."""

from __future__ import annotations

from functools import lru_cache

from wardwright.documents.content.fit_plan_words import move_words
from wardwright.documents.content.fitting_stages import FitStage, fitting_stages
from wardwright.documents.content.names import names_of
from wardwright.documents.content.proving_plan_words import key_of_test, key_of_walk
from wardwright.documents.content.proving_stops import ProveRound, proving_stops, walks_in
from wardwright.documents.content.quantities import sentence
from wardwright.documents.content.screen import laid_over
from wardwright.documents.writers.svg import fragment_svg
from wardwright.errors import InputError, NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.questions.compared import State
from wardwright.questions.fit_plan import FitPlan, fit_plan
from wardwright.questions.proving_plan import ProvingPlan, proving_plan
from wardwright.questions.proving_sketches import expected_of, place_of, sketches_of_test
from wardwright.questions.room_to_move import room_to_move
from wardwright.server.desk import Desk
from wardwright.server.messages import Drawn, GivesWay

WHOLE_ROUND = "round"
"""The key under which the whole walk is drawn, with a number for each stop."""


def stages_of(desk: Desk, state: State) -> tuple[FitStage, ...]:
    """The order of fitting, each device with its sheet."""
    plan = desk.worked_out(lambda: _fit_plan(state.site, desk.catalogue))
    return fitting_stages(plan, state.site, desk.catalogue, findings=state.findings)


def round_of(desk: Desk, state: State) -> ProveRound | None:
    """The round of tests; None where there is no device."""
    plan = desk.worked_out(lambda: _proving_plan(state.site, desk.catalogue))
    return None if plan is None else proving_stops(plan, state.site, desk.catalogue, answers=state.answers)


def drawn_of(desk: Desk, key: str) -> Drawn:
    """What a test, one walk of a test, or the whole round draws.

    Parameters
    ----------
    desk : Desk
        The open job.
    key : str
        What it is known by.

    Returns
    -------
    Drawn
        Of the house as it is now.

    Raises
    ------
    InputError
        If there is no such test.
    """
    revision = desk.job.newest
    state = desk.state(revision)
    plan = desk.worked_out(lambda: _proving_plan(state.site, desk.catalogue))
    found = None if plan is None else _sketches(plan, state, key)
    if found is None:
        raise InputError(
            f"there is no test '{key[:80]}' of this house",
            where="tests",
            cure="Look at the round as it is now, and choose one of it",
        )
    drawings = laid_over(state.site, desk.catalogue, found)
    return Drawn(revision=revision, storeys={name: fragment_svg(one) for name, one in drawings.items()})


def keys_of_round(desk: Desk, site: Site) -> frozenset[str]:
    """What the tests of a state of the house, and the walks that they are made of, are known by."""
    plan = desk.worked_out(lambda: _proving_plan(site, desk.catalogue))
    found: set[str] = set()
    if plan is None:
        return frozenset()
    for stop in plan.round.stops:
        for test in stop.tests:
            found |= {key_of_test(test), *(key_of_walk(test, one) for one in walks_in(plan, test))}
    return frozenset(found)


def gives_way(desk: Desk, device: str) -> GivesWay:
    """How far one device may be fixed from its place before an answer fails.

    Parameters
    ----------
    desk : Desk
        The open job.
    device : str
        Its id.

    Returns
    -------
    GivesWay
        Of the house as it is now: each way was tried alone.

    Raises
    ------
    InputError
        If there is no such device.
    """
    revision = desk.job.newest
    site = desk.job.site(revision)
    one = next((one for one in site.devices if one.id == device), None)
    if one is None:
        raise InputError(
            f"there is no device '{device[:80]}' any more",
            where="fitting",
            cure="Look at the order of fitting as it is now",
        )
    move = desk.worked_out(lambda: room_to_move(site, desk.catalogue, one))
    names = names_of(site, desk.catalogue)
    ways = tuple(sentence(f"may be {way}") for way in move_words(move, names))
    return GivesWay(device=device, revision=revision, ways=ways)


@lru_cache(maxsize=4)
def _fit_plan(site: Site, catalogue: Catalogue) -> FitPlan | None:
    try:
        return fit_plan(site, catalogue, is_quick=True)
    except NotComputable:
        return None


@lru_cache(maxsize=4)
def _proving_plan(site: Site, catalogue: Catalogue) -> ProvingPlan | None:
    try:
        return proving_plan(site, catalogue)
    except NotComputable:
        return None


def _sketches(plan: ProvingPlan, state: State, key: str) -> tuple[Sketch, ...] | None:
    """What a key draws; None: nothing is known by it."""
    if key == WHOLE_ROUND:
        return plan.round.sketches
    for number, stop in enumerate(plan.round.stops, start=1):
        for test in stop.tests:
            of_test = key_of_test(test)
            if key != of_test and not key.startswith(f"{of_test}/"):
                continue
            all_walks = walks_in(plan, test)
            walks = [one for one in all_walks if key in (of_test, key_of_walk(test, one))]
            if not walks and key != of_test:
                return None
            answer = expected_of(test, state.answers)
            return sketches_of_test(walks, answer, place=place_of(plan.round, number))
    return None
