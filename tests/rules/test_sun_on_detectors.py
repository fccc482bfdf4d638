"""Minutes of sun on a detector, and their range."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, one_room
from common.rule_houses.sunlight import FACING_SUNRISE, LOW, TALL_SOUTH
from common.turning import quarter_turned
from wardwright.errors import NotComputable
from wardwright.model.device import Device
from wardwright.model.place import Place
from wardwright.model.site import Site
from wardwright.rules.sun_on_detectors import lens_minutes, nameless, norths_of, sun_on

SITE = one_room(devices=(LOW,), openings=(TALL_SOUTH,), place=FACING_SUNRISE)


def turned(heading_deg: float) -> Device:
    return LOW.model_copy(update={"heading_deg": heading_deg})


def test_a_fan_turned_away_has_no_sun_straight_in_it() -> None:
    assert sun_on(SITE, CATALOGUE, LOW).lens.value > 100.0
    # Straight ahead is 270; the pane lies within 8 degrees of that, the fan 45 to each side.
    assert sun_on(SITE, CATALOGUE, turned(330.0)).lens.value == 0.0
    assert sun_on(SITE, CATALOGUE, turned(330.0)).lens.high > 0.0  # light from beside the fan


def test_what_it_is_called_changes_nothing() -> None:
    renamed = LOW.model_copy(update={"name": "another"})
    assert nameless(renamed) == nameless(LOW)
    assert sun_on(SITE, CATALOGUE, renamed) == sun_on(SITE, CATALOGUE, LOW)


def test_the_quick_count_is_near_the_whole_one() -> None:
    whole = sun_on(SITE, CATALOGUE, LOW).lens
    assert lens_minutes(SITE, CATALOGUE, LOW) == pytest.approx(whole.value, rel=0.5)
    assert lens_minutes(SITE, CATALOGUE, turned(330.0)) == 0.0


def test_north_is_tried_within_its_error_or_all_round() -> None:
    measured = SITE.model_copy(
        update={"place": FACING_SUNRISE.model_copy(update={"basis": (("north_deg", "measured"),)})}
    )
    spans = [norths_of(one)[0][-1] - norths_of(one)[0][0] for one in (SITE, measured)]
    assert spans == pytest.approx([0.1745, 0.0698], abs=1e-3)
    nowhere = SITE.model_copy(update={"place": FACING_SUNRISE.model_copy(update={"north_deg": None})})
    norths, is_known = norths_of(nowhere)
    assert (len(norths), is_known) == (24, False)
    found = sun_on(nowhere, CATALOGUE, LOW)
    assert not found.is_north_known
    assert found.lens.value >= 0.8 * sun_on(SITE, CATALOGUE, LOW).lens.value


def test_a_quarter_turn_changes_nothing() -> None:
    other: Site = quarter_turned(SITE)
    (device,) = other.devices
    one, two = sun_on(SITE, CATALOGUE, LOW), sun_on(other, CATALOGUE, device)
    assert two.lens.value == pytest.approx(one.lens.value, abs=4.0)
    assert one.view is not None
    assert two.view is not None
    assert two.view.value == pytest.approx(one.view.value, rel=0.01)


def test_without_a_latitude_it_says_so() -> None:
    with pytest.raises(NotComputable, match="no latitude"):
        sun_on(SITE.model_copy(update={"place": Place()}), CATALOGUE, LOW)
