from __future__ import annotations

import pytest

from wardwright.rules.dangers import dangers_of
from wardwright.rules.finding import Mend
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

SITE, CATALOGUE = read_sample("lakeside"), load_catalogue()
FIRE_SHEET = next(one.id for one in CATALOGUE.sheets if one.kind == "smoke-alarm")
UNIT = next(one.id for one in SITE.devices if CATALOGUE.sheet(one.sheet).kind == "control-unit")
OUTSIDE = next(one.id for one in SITE.devices if CATALOGUE.sheet(one.sheet).is_outside)


@pytest.mark.parametrize(
    ("mend", "wanted"),
    [
        (Mend(action="change-programme", subject="programme", values=(("abort_delay_s", 0.0),)), ()),
        (Mend(action="tell", subject="front-door", values=(("field", "lock"),)), ()),
        (Mend(action="rename", subject=UNIT, values=(("name", "x"),)), ()),
        (Mend(action="move-device", subject=UNIT, values=(("near", "x"),)), ("mains", "drilling", "old-coating")),
        (
            Mend(action="move-device", subject=OUTSIDE, values=(("height_m", 3.0),)),
            ("drilling", "old-coating", "ladder"),
        ),
        (Mend(action="turn-device", subject=OUTSIDE, values=(("heading_deg", 9.0),)), ("ladder",)),
        (Mend(action="add-light", subject="front-door"), ("mains", "ladder")),
        (Mend(action="change-lock", subject="front-door"), ("way-out",)),
        (
            Mend(action="add-device", subject="den", values=(("sheet", FIRE_SHEET), ("on", "ceiling"))),
            ("drilling", "old-coating", "ladder", "fire"),
        ),
    ],
    ids=lambda one: f"{one.action} {one.subject}" if isinstance(one, Mend) else "",
)  # fmt: skip
def test_what_a_mend_is_dangerous_with(mend: Mend, wanted: tuple[str, ...]) -> None:
    assert dangers_of(SITE, CATALOGUE, mend) == wanted


def test_an_unknown_sheet_is_no_fault() -> None:
    mend = Mend(action="add-device", subject="den", values=(("sheet", "nothing"), ("on", "wall")))
    assert dangers_of(SITE, CATALOGUE, mend) == ("drilling", "old-coating")
