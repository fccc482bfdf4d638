"""The cheapest of a kind that fits and goes in the same place."""

from __future__ import annotations

from common.houses import CATALOGUE, on_opening, on_wall
from wardwright.rules.replacement import replaced

FAN = on_wall("fan", "fan-plain", "south", 1.0)


def test_the_cheapest_that_fits_is_named() -> None:
    (mend,) = replaced(CATALOGUE, FAN, fits=lambda sheet: sheet.grade == 2)
    assert (mend.action, mend.subject, mend.values) == ("replace-device", "fan", (("sheet", "fan-better"),))


def test_it_goes_where_the_old_one_was() -> None:
    contact = on_opening("contact", "door")
    assert replaced(CATALOGUE, contact, fits=lambda sheet: sheet.kind == "movement-detector") == ()
    on_ceiling = CATALOGUE.model_copy(
        update={"sheets": tuple(s.model_copy(update={"mounts": ("ceiling",)}) for s in CATALOGUE.sheets)}
    )
    assert replaced(on_ceiling, FAN, fits=lambda sheet: sheet.grade == 2) == ()


def test_none_is_none() -> None:
    assert replaced(CATALOGUE, FAN, fits=lambda _: False) == ()
