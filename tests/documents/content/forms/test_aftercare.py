from __future__ import annotations

from common.fitted import DAY, as_text, fitted
from wardwright.documents.content.forms.aftercare import aftercare
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


def test_it_has_four_records_each_on_a_page() -> None:
    paper = aftercare(fitted(), CATALOGUE, (), drawn_up=DAY)
    assert [one.heading for one in paper.sections if one.is_form] == [
        "Activation investigation record",
        "Variation record",
        "Complaint record",
    ]
    assert paper.sections[1].heading == "Service report"


def test_each_device_has_what_was_expected_of_it_or_says_that_nothing_was_worked_out() -> None:
    site = fitted()
    told = as_text(aftercare(site, CATALOGUE, ask(site, CATALOGUE), drawn_up=DAY))
    assert all(device.name in told for device in site.devices)
    assert "CU | First landing control unit | none worked out | 4.0 years (3.0 to 5.0 years)" in told
    bare = as_text(aftercare(site, CATALOGUE, (), drawn_up=DAY))
    assert bare.count("none worked out") == 2 * len(site.devices)
