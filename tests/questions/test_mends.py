"""Mends are tried on the model, and say what they would bring."""

from __future__ import annotations

import pytest

from common.worked_terrace import UNDER_STAIRS, worked_terrace
from wardwright.model.fixture import Outlet
from wardwright.model.programme import Zone
from wardwright.model.revision import replaced, with_device
from wardwright.model.site import Site
from wardwright.physics.walking.from_site import Spot
from wardwright.questions.changes_tried import contact_on
from wardwright.questions.mends import mends_for
from wardwright.questions.race_from_opening import answers
from wardwright.questions.time_in_hand import least_hand
from wardwright.questions.unit_elsewhere import best_elsewhere, moved_to
from wardwright.rules.finding import Mend
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.draws import estimate_of
from wardwright.trials.race import race
from wardwright.trials.ways_in import WayIn, ways_in

CATALOGUE = load_catalogue()
GOAL = Spot(UNDER_STAIRS.storey, *UNDER_STAIRS.at_m)
SOCKETS = (
    Outlet(id="bedroom-socket", name="bedroom socket", kind="power", storey="upper", at_m=(6.9, 1.2)),
    Outlet(id="living-socket", name="living socket", kind="power", storey="ground", at_m=(2.4, 0.4)),
)


def way(site: Site, opening: str, manner: str = "opened") -> WayIn:
    return next(w for w in ways_in(site, CATALOGUE)[0] if (w.opening.id, w.manner) == (opening, manner))


def mends(site: Site, opening: str) -> dict[str, Mend]:
    worst = race(site, CATALOGUE, way=way(site, opening), goal=GOAL)
    estimate = estimate_of(least_hand(worst, CATALOGUE), worst.cases, unit="s")
    found = mends_for(site, CATALOGUE, ways=[worst.way], worst=worst, now=estimate)
    return {mend.action: mend for mend in found} | {f"{mend.action} {mend.subject}": mend for mend in found}


def test_a_contact_on_an_opening_window_brings_what_a_run_with_it_gives() -> None:
    site = worked_terrace(contacts={"front-door": "entry-exit"})
    mend = mends(site, "kitchen-window")["add-device kitchen-window"]
    chosen = way(site, "kitchen-window")
    sheet = CATALOGUE.sheet(str(dict(mend.values)["sheet"]))
    assert sheet.kind == "opening-contact"
    contact = contact_on(chosen.opening, sheet, device_id="put-in")
    zone = Zone(id="put-in-zone", number=99, name="put in", devices=(contact.id,), behaviour="instant")
    mended = replaced(with_device(site, contact), zones=(*site.zones, zone))
    after = race(mended, CATALOGUE, way=chosen, goal=GOAL)
    assert mend.gain is not None
    assert mend.gain.value == pytest.approx(float(least_hand(after, CATALOGUE)[0]))
    assert mend.gain.value > 5.0


def test_the_abort_delay_is_named_where_it_counts() -> None:
    site = worked_terrace(contacts={"kitchen-window": "instant-delayed"}, abort_delay_s=30.0)
    assert dict(mends(site, "kitchen-window")["change-programme"].values) == {"abort_delay_s": 0.0}


def test_another_power_point_is_named_for_the_unit_where_it_is_better() -> None:
    site = worked_terrace(contacts={"front-door": "instant"}).model_copy(update={"outlets": SOCKETS})
    best = best_elsewhere(site, CATALOGUE)
    assert best is not None
    assert best.outlet == "bedroom-socket"
    both = site
    moved = moved_to(both, CATALOGUE, best.spot)
    before, after = (
        next(a for a in answers(s, CATALOGUE) if a.subject_id == "front-door") for s in (both, moved)
    )
    assert before.estimate is not None
    assert after.estimate is not None
    assert after.estimate.value > before.estimate.value


def test_a_strong_lock_is_not_named_again() -> None:
    site = worked_terrace(contacts={"front-door": "entry-exit"})
    strong = tuple(o.model_copy(update={"lock": "rc3"}) if o.id == "front-door" else o for o in site.openings)
    assert "change-lock" in mends(site, "front-door")
    assert "change-lock" not in mends(site.model_copy(update={"openings": strong}), "front-door")


def test_one_mend_for_each_thing_to_do() -> None:
    site = worked_terrace(contacts={"front-door": "entry-exit"})
    for answer in answers(site, CATALOGUE):
        named = [(m.action, m.subject) for m in answer.mends]
        assert len(named) == len(set(named))


def test_where_the_glass_stays_the_worse_manner_no_contact_but_a_shock_detector_is_the_mend() -> None:
    site = worked_terrace(contacts={"front-door": "entry-exit"})
    answer = next(a for a in answers(site, CATALOGUE) if a.subject_id == "kitchen-window")
    (on_it,) = (m for m in answer.mends if (m.action, m.subject) == ("add-device", "kitchen-window"))
    assert CATALOGUE.sheet(str(dict(on_it.values)["sheet"])).kind == "shock-detector"
    assert "add-device kitchen" in {f"{m.action} {m.subject}" for m in answer.mends}


@pytest.mark.parametrize("opening", ["front-door", "kitchen-window"])
def test_asking_again_after_a_mend_gives_what_it_promised(opening: str) -> None:
    site = worked_terrace(contacts={"front-door": "entry-exit"}, abort_delay_s=20.0)
    site = site.model_copy(update={"outlets": SOCKETS})
    answer = next(a for a in answers(site, CATALOGUE) if a.subject_id == opening)
    for mend in answer.mends:
        if mend.action == "change-programme":
            programme = site.programme.model_copy(update=dict(mend.values))
            again = answers(site.model_copy(update={"programme": programme}), CATALOGUE)
        elif mend.action == "move-device":
            spot = best_elsewhere(site, CATALOGUE)
            assert spot is not None
            again = answers(moved_to(site, CATALOGUE, spot.spot), CATALOGUE)
        else:
            continue
        after = next(a for a in again if a.subject_id == opening)
        assert after.estimate is not None
        assert mend.gain is not None
        assert after.estimate.value == pytest.approx(mend.gain.value)


def test_a_site_without_an_instant_behaviour_is_mended_too() -> None:
    site = worked_terrace(contacts={"front-door": "entry-exit"})
    without = site.model_copy(update={"behaviours": tuple(b for b in site.behaviours if b.id != "instant")})
    assert mends(without, "front-door")


def test_long_names_of_openings_are_no_trouble() -> None:
    site = worked_terrace(contacts={"front-door": "entry-exit"})
    long = "w" * 80
    openings = tuple(
        o.model_copy(update={"id": long}) if o.id == "kitchen-window" else o for o in site.openings
    )
    found = answers(site.model_copy(update={"openings": openings}), CATALOGUE)
    assert next(a for a in found if a.subject_id == long).mends
