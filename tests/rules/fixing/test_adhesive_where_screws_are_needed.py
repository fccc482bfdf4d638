"""FIX102: the sheet, the kind, and what is to tell its removal."""

from __future__ import annotations

import pytest

from common.houses import CATALOGUE, on_opening, on_wall, one_room, window
from wardwright.model.device import Device, Fixing, Surface
from wardwright.rules.finding import Finding
from wardwright.rules.fixing.adhesive_where_screws_are_needed import adhesive_where_screws_are_needed as rule
from wardwright.rules.registry import findings_of

CONTACT = on_opening("contact", "window", "contact-taped")


def findings(device: Device, surface: Surface = "plaster") -> tuple[Finding, ...]:
    fixing = Fixing(by="adhesive", surface=surface)
    site = one_room(
        openings=(window("window", "north", 2.65),), devices=(device.model_copy(update={"fixing": fixing}),)
    )
    return findings_of(rule, site, CATALOGUE)


@pytest.mark.parametrize(
    ("sheet", "severity", "words"),
    [
        ("fan-better", "must mend", "its sheet allows screws only"),
        ("fan-plain", "advise", "it has to keep its aim"),
    ],
)
def test_the_sheet_binds_before_the_custom(sheet: str, severity: str, words: str) -> None:
    (found,) = findings(on_wall("fan", sheet, "south", 1.0))
    assert found.severity == severity
    assert words in found.message
    assert found.mends[0].values == (("by", "screws"),)


@pytest.mark.parametrize(("surface", "count"), [("upvc", 0), ("steel", 0), ("timber", 1), ("plaster", 1)])
def test_a_contact_may_be_taped_to_a_frame_that_is_not_drilled(surface: Surface, count: int) -> None:
    assert len(findings(CONTACT, surface)) == count


def test_a_contact_that_tells_no_removal_may_be_taped() -> None:
    sheets = tuple(s.model_copy(update={"detects_removal": False}) for s in CATALOGUE.sheets)
    site = one_room(
        openings=(window("window", "north", 2.65),),
        devices=(CONTACT.model_copy(update={"fixing": Fixing(by="adhesive", surface="timber")}),),
    )
    assert findings_of(rule, site, CATALOGUE.model_copy(update={"sheets": sheets})) == ()


def test_a_textured_coating_is_not_drilled() -> None:
    (found,) = findings(on_wall("fan", "fan-plain", "south", 1.0), "textured")
    assert found.mends == ()
