"""SND104: behind a door, in the room, American and European packs."""

from __future__ import annotations

from common.houses import CATALOGUE, two_rooms_and_hall
from common.mending import mended
from common.rule_houses import HOUSES
from common.rule_houses.sounders import BED, IN_KITCHEN
from wardwright.model.place import Place
from wardwright.model.site import Site
from wardwright.rules.finding import Finding
from wardwright.rules.registry import findings_of
from wardwright.rules.sounders.pillow_that_hears_too_little import pillow_that_hears_too_little as rule


def findings(site: Site) -> tuple[Finding, ...]:
    return findings_of(rule, site, CATALOGUE)


def test_a_pillow_behind_two_doors_is_named_with_its_level() -> None:
    (found,) = findings(HOUSES["SND104"].fires)
    assert (found.subject, found.severity, found.limit) == ("bed", "check with the standard", 75.0)
    assert found.estimate is not None
    assert found.estimate.low < found.estimate.value < 75.0
    assert "no promise of waking" in found.cure


def test_the_american_pack_advises() -> None:
    site = two_rooms_and_hall(devices=(IN_KITCHEN,), fixtures=(BED,), place=Place(rule_pack="us"))
    (found,) = findings(site)
    assert found.severity == "advise"


def test_its_first_mend_carried_out_silences_it() -> None:
    site = HOUSES["SND104"].fires
    (found,) = findings(site)
    added = next(mend for mend in found.mends if mend.action == "add-device")
    assert findings(mended(site, added)) == ()


def test_no_sounder_and_no_bed_are_not_run() -> None:
    (found,) = findings(two_rooms_and_hall(fixtures=(BED,)))
    assert (found.severity, found.lacks) == ("not run", "sounder")
    (found,) = findings(HOUSES["SND104"].cannot_run)
    assert (found.severity, found.lacks) == ("not run", None)
