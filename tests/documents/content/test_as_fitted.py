from __future__ import annotations

from collections.abc import Callable

from common.fitted import DAY, as_text, fitted
from wardwright.documents.content.as_fitted import as_fitted, as_fitted_table
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


def test_the_list_reads_as_it_did(kept: Callable[[str, str], None]) -> None:
    kept("as-fitted.txt", as_text(as_fitted(fitted(), CATALOGUE, drawn_up=DAY)))


def test_every_device_has_a_row_and_the_control_unit_no_place() -> None:
    site = fitted()
    rows = as_fitted_table(site, CATALOGUE).rows
    assert len(rows) == len(site.devices)
    assert rows[-1][:3] == ("place in the fitter\u2019s record", "control unit", "control unit")
    assert not any("Landing" in row and "control unit" in row for row in rows)
