from __future__ import annotations

from common.fitted import DAY, as_text, fitted
from wardwright.documents.content.forms.leaving import leaving
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


def test_all_devices_and_their_batteries_go_to_a_stream() -> None:
    site = fitted()
    table = next(
        one.table for one in leaving(site, CATALOGUE, drawn_up=DAY).sections if one.heading == "Waste"
    )
    assert table is not None
    electronics = [row[2] for row in table.rows if row[0] == "electronics"]
    assert sum(int(count) for count in electronics if isinstance(count, int)) == len(site.devices)
    assert any("alkaline" in str(row[1]) for row in table.rows if str(row[0]).startswith("batteries"))


def test_the_code_itself_stands_in_no_letter() -> None:
    told = as_text(leaving(fitted(), CATALOGUE, drawn_up=DAY))
    assert "it stands in no letter" in told
    assert "Mains off first, then batteries of sounders" in told
