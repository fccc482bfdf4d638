from __future__ import annotations

from collections.abc import Callable

from common.fitted import DAY, as_text
from wardwright.documents.content.paper import Paper
from wardwright.documents.content.protection_sections import added_sections, cover_sections, locks_section
from wardwright.model.site import Site
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def paper_of(site: Site) -> Paper:
    answers = ask(site, CATALOGUE)
    sections = (
        locks_section(site, CATALOGUE, answers),
        *cover_sections(site, CATALOGUE),
        *added_sections(site, CATALOGUE, answers),
    )
    return Paper("Protection", site.name, "client", DAY, sections)


def test_the_clients_paper_reads_as_it_did(kept: Callable[[str, str], None]) -> None:
    kept("protection.txt", as_text(paper_of(read_sample("terrace"))))


def test_locks_and_lights_stand_first() -> None:
    first = paper_of(read_sample("terrace")).sections[0]
    assert first.heading == "Locks and lights first"
    assert any("Front door" in point for point in first.points)


def test_every_room_and_every_door_and_window_to_the_outside_is_told() -> None:
    site = read_sample("terrace")
    tables = {section.table.name: section.table for section in paper_of(site).sections if section.table}
    rooms = [row[0] for row in tables["Rooms, full set"].rows]
    assert sorted(map(str, rooms)) == sorted(one.name for one in site.spaces)
    openings = {row[0]: row[2:] for row in tables["Openings, full set"].rows}
    assert openings["Front door"] == ("noticed as it is opened", "no pane that is quickly broken")
    assert len(openings) == 5
    text = next(section.text for section in paper_of(site).sections if section.text and section.table)
    assert text == (
        "Taken to be out of reach, or too small for a person: Bedroom 1 window, Bedroom 2 window and Landing window.",
    )


def test_a_part_in_which_nothing_is_on_says_so() -> None:
    site = read_sample("terrace")
    by_day = tuple(zone.model_copy(update={"parts": ("full",)}) for zone in site.zones)
    paper = paper_of(site.model_copy(update={"zones": by_day}))
    sections = {section.heading: section for section in paper.sections}
    assert sections["With the night part set"].text == ("Nothing is on in this part.",)


def test_nothing_is_drawn() -> None:
    assert all(section.drawing is None for section in paper_of(read_sample("terrace")).sections)
