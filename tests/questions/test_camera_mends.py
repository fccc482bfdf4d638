"""Mends of a view, carried out."""

from __future__ import annotations

from common.houses import CATALOGUE, one_room
from common.mending import mended
from common.rule_houses.cameras import AHEAD, FAR_DOOR, WIDE_PLOT
from wardwright.model.surroundings import Ground
from wardwright.questions.camera_mends import camera_mends
from wardwright.rules.camera_view import view_of

SITE = one_room(devices=(AHEAD,), openings=(FAR_DOOR,), ground=Ground(boundary_m=WIDE_PLOT))


def test_the_mend_carried_out_brings_what_it_says() -> None:
    sheet = CATALOGUE.sheet(AHEAD.sheet).camera
    assert sheet is not None
    view = view_of(SITE, AHEAD, sheet)
    tried = [one for one in camera_mends(SITE, CATALOGUE, AHEAD, view=view, edition="2014") if one.gain]
    assert tried
    for mend in tried:
        after = mended(SITE, mend).devices[0]
        other = CATALOGUE.sheet(after.sheet).camera
        assert other is not None
        changed = view_of(SITE, after, other)
        assert changed.deciding is not None
        assert mend.gain is not None
        assert changed.deciding.density == mend.gain.value
        assert (changed.beyond_m2 or 0.0) <= (view.beyond_m2 or 0.0)
