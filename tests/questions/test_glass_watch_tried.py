"""Shock and glass-break detectors as mends of a way in."""

from __future__ import annotations

from typing import Any

import pytest

from common.worked_terrace import ear_in_kitchen, shock_on, with_watch, worked_terrace
from wardwright.model.programme import Zone
from wardwright.model.revision import replaced, with_device
from wardwright.model.site import Site
from wardwright.questions.answer import Answer
from wardwright.questions.changes_tried import changes_for
from wardwright.questions.glass_watch_tried import watches_to_add
from wardwright.questions.race_from_opening import answers
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.alarm import alarm_of
from wardwright.trials.ways_in import ways_in

CATALOGUE = load_catalogue()
SITE = worked_terrace(contacts={"kitchen-window": "instant"})


def kinds(site: Site, opening: str, manner: str) -> list[str]:
    way = next(w for w in ways_in(site, CATALOGUE)[0] if (w.opening.id, w.manner) == (opening, manner))
    heard = alarm_of(site, CATALOGUE).heard
    found = watches_to_add(site.bare, CATALOGUE, heard, way=way, device_id="new")
    assert all(dict(values)["sheet"] == device.sheet for values, device in found)
    return [CATALOGUE.sheet(device.sheet).kind for _, device in found]


def with_window(site: Site, **facts: Any) -> Site:
    changed = tuple(
        one.model_copy(update=facts) if one.id == "kitchen-window" else one for one in site.openings
    )
    return site.model_copy(update={"openings": changed})


def asked(site: Site, opening: str) -> Answer:
    return next(one for one in answers(site, CATALOGUE) if one.subject_id == opening)


def test_both_kinds_are_offered_where_nothing_notices_the_glass() -> None:
    assert kinds(SITE, "kitchen-window", "through the glass") == ["shock-detector", "glass-break-detector"]


@pytest.mark.parametrize("device", [shock_on("kitchen-window"), ear_in_kitchen()])
def test_nothing_is_offered_where_one_that_can_alarm_notices_it(device: Any) -> None:
    assert kinds(with_watch(SITE, device), "kitchen-window", "through the glass") == []
    logged = with_watch(SITE, device, "log-only")
    assert kinds(logged, "kitchen-window", "through the glass") != []


def test_only_what_would_notice_is_offered() -> None:
    """A contact tells that it is opened; glass that no sheet names is left to the shock detector."""
    assert kinds(SITE, "kitchen-window", "opened") == []
    bare = worked_terrace(contacts={})
    assert kinds(bare, "kitchen-window", "opened") == ["shock-detector"]
    assert kinds(with_window(bare, is_locked=False), "kitchen-window", "opened") == []
    laminated = with_window(SITE, glazing="laminated")
    assert kinds(laminated, "kitchen-window", "through the glass") == ["shock-detector"]
    # 2.5 m wide: its far corner is beyond the shock detector's 1.6 m.
    wide = with_window(SITE, width_m=2.5, offset_m=2.0)
    assert kinds(wide, "kitchen-window", "through the glass") == ["glass-break-detector"]


@pytest.mark.parametrize(("reach_m", "is_offered"), [(2.5, True), (0.0, False)])
def test_a_covered_pane_is_listened_to_only_through_its_covering(reach_m: float, is_offered: bool) -> None:
    """0 m: the sheet does not hear through curtains at all."""
    sheets = tuple(
        one
        if one.glass_break is None
        else one.model_copy(
            update={"glass_break": one.glass_break.model_copy(update={"curtained_reach_m": reach_m})}
        )
        for one in CATALOGUE.sheets
    )
    catalogue = CATALOGUE.model_copy(update={"sheets": sheets})
    site = with_window(SITE, covering="curtain")
    way = next(w for w in ways_in(site, catalogue)[0] if w.manner == "through the glass")
    found = {
        catalogue.sheet(device.sheet).kind: dict(values)
        for values, device in watches_to_add(site.bare, catalogue, (), way=way, device_id="new")
    }
    assert ("glass-break-detector" in found) is is_offered
    assert found["shock-detector"]["behaviour"] == "instant"


@pytest.mark.parametrize("opening", ["kitchen-window", "front-door"])
def test_asking_again_with_the_device_put_in_gives_what_the_mend_promised(opening: str) -> None:
    site = SITE
    before = asked(site, opening)
    way = next(w for w in reversed(ways_in(site, CATALOGUE)[0]) if w.opening.id == opening)
    assert before.estimate is None or before.estimate.value < 0
    mend = next(m for m in before.mends if (m.action, m.subject) == ("add-device", opening))
    old = {one.id for one in site.devices}
    trial = next(
        change[3]
        for change in changes_for(site, CATALOGUE, way, now=mend.gain)  # type: ignore[arg-type]  # it has one
        if change[:3] == (mend.action, mend.subject, mend.values)
    )
    new = next(device for device, _ in trial.alarm.heard if device.id not in old)
    zone = Zone(id="put-in", number=99, name="put in", devices=(new.id,), behaviour="instant")
    after = asked(replaced(with_device(site, new), zones=(*site.zones, zone)), opening)
    assert mend.gain is not None
    assert after.estimate is not None
    assert after.estimate.value == pytest.approx(mend.gain.value)
