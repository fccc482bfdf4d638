from __future__ import annotations

import re
from collections.abc import Callable
from pathlib import Path

import pytest

from common.cottage import BLOCKS, COTTAGE, PAGE, WHERE, add, read
from wardwright.errors import NotesError
from wardwright.intake.notes.reading import LINES, read_notes
from wardwright.model.document import read_document, write_document
from wardwright.model.placement import is_way_in, sides_of_opening
from wardwright.model.validation import problems
from wardwright.store.catalogue import load_catalogue

ROWS = re.findall(r"^\| `(.*?)` \| (.*?) \|$", PAGE.partition("| Line added to the cottage")[2], re.MULTILINE)


@pytest.mark.parametrize("number", range(len(BLOCKS)))
def test_every_example_of_the_page_holds_together(number: int) -> None:
    kind, text = BLOCKS[number]
    site = read() if kind == "house" else add(text) if kind == "kit" else read(text)
    assert problems(site, load_catalogue()) == ()
    assert read_document(write_document(site), where="x") == site


@pytest.mark.parametrize(("line", "message"), ROWS)
def test_every_refusal_of_the_page_says_what_where_and_the_cure(line: str, message: str) -> None:
    with pytest.raises(NotesError) as caught:
        read(line)
    assert caught.value.where == f"{WHERE} line {len(COTTAGE.splitlines()) + 1}"
    assert f"{caught.value.what}. {caught.value.cure}." == message


def test_the_page_has_enough_refusals() -> None:
    assert len(ROWS) >= 30


def test_the_page_names_every_kind_of_line() -> None:
    said = set(re.findall(r"[a-z][a-z-]+", PAGE))
    assert [word for word in LINES if word not in said] == []


def test_every_line_kind_has_an_example() -> None:
    used = {line.split()[0] for _, text in BLOCKS for line in text.splitlines() if line.strip()}
    missing = set(LINES) - used
    # One of several that are read alike stands for the rest.
    alike = {
        "rules", "longitude", "usual-room", "room", "gap", "garage-door", "use", "opening-contact", "network-point",
        "small-dog", "big-dog", "rabbit", "bird", "stove", "fire", "heater", "vent", "bed", "table", "chair", "shelf",
        "worktop", "appliance", "sanitary", "curtain", "screen", "mirror", "other",
    }  # fmt: skip
    assert missing <= alike


def test_the_first_word_may_be_a_rooms_name_or_a_keyword() -> None:
    site = read("cupboard 1.0 x 1.0 against landing west\ncupboard hall west 0.4 x 0.4 x 1.0")
    assert site.space("cupboard").use == "store"
    assert site.fixtures[0].kind == "cupboard"


def test_an_unknown_first_word_is_answered_with_the_nearest() -> None:
    with pytest.raises(NotesError, match="Did you mean 'movement-detector'") as caught:
        read("movment-detector hall corner north-west 2.2 m")
    assert "no line begins with 'movment-detector'" in caught.value.what


def test_notes_without_a_room_need_a_house() -> None:
    with pytest.raises(NotesError, match="the notes hold no room"):
        read_notes("person mother\n", where="x", catalogue=load_catalogue())
    with pytest.raises(NotesError, match="the notes hold no room"):
        read_notes("", where="x", catalogue=load_catalogue())


def test_lines_after_the_rooms_may_stand_in_any_order() -> None:
    kit = [
        "zone 1 hall-movement entry-route",
        "movement-detector hall corner north-west 2.2 m",
        "lock kitchen-window latch",
        "programme entry 20 s",
    ]
    assert read("\n".join(kit)) == read("\n".join(reversed(kit)))


def test_line_ends_and_comments_change_nothing() -> None:
    other = "\r\n".join(line + "   # said on the spot" for line in COTTAGE.splitlines()) + "\r\n"
    assert read(house=other) == read()


def test_notes_add_to_a_house_and_leave_the_rest_as_it_was() -> None:
    base = read()
    site = add("person mother usual bed bedroom-1\nset front-door lock rc2\n", base=base)
    assert site.people[0].bed == "bedroom-1"
    assert site.opening("front-door").lock == "rc2"
    assert site.opening("kitchen-door") is base.opening("kitchen-door")
    assert (site.walls, site.spaces, site.stairs) == (base.walls, base.spaces, base.stairs)
    assert base.people == ()


@pytest.mark.parametrize(
    "line",
    [
        "study 2 x 2 against hall west",
        "storey second 2.4 high",
        "door hall west",
        "window hall west 1 x 1",
        "stairs hall to landing, 0.5 from west, 1 from south, runs north 2",
    ],
)
def test_what_the_building_file_holds_is_not_added(line: str) -> None:
    with pytest.raises(NotesError, match="cannot be added to an imported house"):
        add(line)


def test_the_cottage_is_what_the_notes_say() -> None:
    site = read()
    assert sides_of_opening(site, site.opening("kitchen-door")) in {("hall", "kitchen"), ("kitchen", "hall")}
    assert {o.id for o in site.openings if is_way_in(site, o)} == {"front-door", "kitchen-window"}
    assert site.space("kitchen").outline_m == ((5.1, 0.1), (5.1, 4.2), (1.9, 4.2), (1.9, 0.1))


@pytest.mark.parametrize(("word", "written"), [("PIR", "movement-detector"), ("siren", "sounder")])
def test_words_of_the_trade_get_the_word_of_the_notes(word: str, written: str) -> None:
    text = f"storey ground 2.4 high\nhall 2 x 3\n{word} hall east"
    with pytest.raises(NotesError, match=f"line 3: no line begins with '{word}'. Write '{written}' for it"):
        read_notes(text, where="t", catalogue=load_catalogue())


@pytest.mark.given_data
@pytest.mark.parametrize(
    ("house", "kit", "premises"),
    [
        ("houses/AC20-FZK-Haus.ifc", "fzk", None),
        ("houses/Duplex_A_20110907.ifc", "duplex-a", "A"),
    ],
)
def test_kits_fit_the_given_houses(
    given: Callable[[str], Path], house: str, kit: str, premises: str | None
) -> None:
    from wardwright.intake.ifc.reading import read_ifc  # noqa: PLC0415 - the IFC library is slow to import

    base, _ = read_ifc(given(house).read_bytes(), where=house, premises=premises)
    notes = Path(__file__).resolve().parents[2] / "data_kits" / f"{kit}.notes"
    site = read_notes(
        notes.read_text(encoding="utf-8"), where=notes.name, base=base, catalogue=load_catalogue()
    )
    known = set(problems(base, load_catalogue()))
    assert [problem for problem in problems(site, load_catalogue()) if problem not in known] == []
    assert len(site.devices) == {"fzk": 10, "duplex-a": 8}[kit]
    assert all(site.space(person.bed).belongs == "ours" for person in site.people if person.bed)
    entry = [o for o in site.openings if o.is_entry_door]
    assert len(entry) == 1
    assert is_way_in(site, entry[0])
