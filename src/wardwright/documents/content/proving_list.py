"""What to walk-test of each device, from what it is taken to see."""

from __future__ import annotations

from collections.abc import Sequence

from wardwright.documents.content.board import key_of
from wardwright.documents.content.fitting_list import StepLine, StepStorey, by_storey, step_line
from wardwright.documents.content.quantities import quantity, sentence, value_words
from wardwright.documents.content.schedule import sheet_of
from wardwright.documents.drawing.devices import device_tags
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount
from wardwright.model.site import Site
from wardwright.questions import what_it_sees
from wardwright.questions.answer import Answer
from wardwright.rules.zone_names import display_length, shown_name

PARTS_TOLD = {
    "surely noticed on": "walk its edge, and it notices",
    "possibly noticed on": "beyond it, it stays quiet",
}
"""The parts of what a detector sees that one can walk to, and what is to be shown there."""
NO_TEST = "test it as its own sheet says: no test is worked out for it here"
LEAF = "open {opening} slowly: its zone shows it{gap}. Then shut it hard: it stays quiet"
GAP = " before the gap is {gap}, the widest of its sheet"
SLEEP = "it sleeps for {sleep} after a signal: stay out of its sight that long before each walk"


def proving_list(site: Site, catalogue: Catalogue, answers: Sequence[Answer]) -> tuple[StepStorey, ...]:
    """List what to test of each device.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue
        Says what each device is.
    answers : sequence of Answer
        Those of question 11 are told.

    Returns
    -------
    tuple of StepStorey
        From the lowest storey up; within one by zone, devices in none last.
    """
    tags, length = device_tags(site, catalogue), display_length(site, catalogue)
    seen = {one.subject_id: one for one in answers if one.question == what_it_sees.NUMBER}
    zones = {device: zone for zone in site.zones for device in zone.devices}

    def line(device: Device) -> StepLine:
        zone = zones.get(device.id)
        shown = (
            "in no zone: nothing shows on the display"
            if zone is None
            else f"shows as zone {zone.number}, {shown_name(zone.name, length)}"
        )
        facts = (shown, *_tests(site, catalogue, device, seen=seen.get(device.id)))
        return step_line(site, device, tag=tags[device.id]).model_copy(
            update={
                "facts": tuple(sentence(one) for one in facts),
                "answer": key_of(seen[device.id]) if device.id in seen else "",
            }
        )

    first = {device: zone.number for device, zone in zones.items()}
    ordered = sorted(site.devices, key=lambda one: (one.id not in first, first.get(one.id, 0), one.name))
    return by_storey(site, ordered, line)


def _tests(site: Site, catalogue: Catalogue, device: Device, *, seen: Answer | None) -> tuple[str, ...]:
    sheet = sheet_of(catalogue, device)
    if seen is not None:
        sleep_s = sheet.movement.sleep_s if sheet is not None and sheet.movement is not None else 0.0
        sleeps = (SLEEP.format(sleep=quantity(sleep_s, "s", 1.0)),) if sleep_s else ()
        return (*sleeps, *_walks(seen))
    if sheet is not None and sheet.kind == "opening-contact" and isinstance(device.mount, OpeningMount):
        contact = sheet.contact
        gap = "" if contact is None else GAP.format(gap=quantity(contact.gap_m * 1000.0, "mm", 1.0))
        return (LEAF.format(opening=site.opening(device.mount.opening).name, gap=gap),)
    return (NO_TEST,)


def _walks(seen: Answer) -> tuple[str, ...]:
    floors = [
        f"{part.name} {value_words(part.estimate)} of floor, hatched on the plan: {PARTS_TOLD[part.name]}"
        for part in seen.parts
        if part.name in PARTS_TOLD and part.estimate is not None
    ]
    told = value_words(seen.estimate) if seen.estimate else seen.reason
    blind = f"{seen.measure}: {told}"
    return (*floors, blind, *seen.notes)
