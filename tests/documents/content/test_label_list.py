from __future__ import annotations

from common.fitted import fitted
from wardwright.documents.content.label_list import label_table
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


def test_each_device_has_a_label_by_its_zone() -> None:
    site = fitted()
    rows = label_table(site, CATALOGUE).rows
    assert len(rows) == len(site.devices)
    numbers = [row[1] for row in rows]
    assert numbers[:6] == [1, 2, 3, 4, 5, 6]
    assert set(numbers[6:]) == {"none"}
    assert "control unit" in [row[3] for row in rows]
