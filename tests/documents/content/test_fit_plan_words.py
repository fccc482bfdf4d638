"""The plan of fitting in words."""

from __future__ import annotations

from typing import get_args

from common.priced_room import priced_room
from wardwright.costing.tasks import Climb
from wardwright.documents.content.fit_plan_words import (
    CLIMBS,
    COLUMNS,
    STAGES,
    fit_plan_table,
    move_words,
    sheet_words,
    stage_words,
)
from wardwright.documents.content.names import names_of
from wardwright.documents.content.wording import DANGERS
from wardwright.questions.fit_plan import fit_plan
from wardwright.questions.room_to_move import Leeway, RoomToMove
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample
from wardwright.works.fitting_order import FittingStep, Stage

CATALOGUE = load_catalogue()
SITE = priced_room()
PLAN = fit_plan(SITE, CATALOGUE)
NAMES = names_of(SITE, CATALOGUE)


def test_every_stage_and_every_climb_has_its_words() -> None:
    assert set(STAGES) == set(get_args(Stage))
    assert set(CLIMBS) == set(get_args(Climb))
    assert stage_words(FittingStep(stage="contacts", devices=(), climb="steps")).endswith("; from steps")


def test_a_sheet_says_where_how_high_and_what_to_beware_of() -> None:
    words = sheet_words(PLAN.sheets[0], NAMES)
    assert (
        words[0]
        == "Living room: 85 cm from the right corner as one faces the wall, 1.50 m above the floor, from the floor"
    )
    assert "not decided" in words[1]
    assert DANGERS["mains"].removesuffix(".") in words
    assert DANGERS["drilling"].removesuffix(".") in words


def test_leeway_says_what_fails() -> None:
    ways = (
        Leeway(way="left", unit="m", holds=0.4),
        Leeway(way="down", unit="m", holds=0.2, fails_at=0.4, rule="MOV102", subject="hall"),
        Leeway(way="turned left", unit="deg", holds=5.0, fails_at=10.0, question=5, subject="hall"),
        Leeway(way="up", unit="m", holds=0.1, fails_at=0.2),
    )
    assert move_words(RoomToMove(device="hall", ways=ways), NAMES) == (
        "moved left: 40 cm, and perhaps farther",
        "moved down: 20 cm; at 40 cm MOV102 for hall",
        "turned left: 5 degrees; at 10 degrees Undetected walk of hall fails",
        "moved up: 10 cm; at 20 cm the wall or the room ends, or an opening is there",
    )


def test_the_table_has_a_row_a_device_and_says_what_was_not_tried() -> None:
    table = fit_plan_table(PLAN, SITE, CATALOGUE)
    assert [row[2] for row in table.rows] == ["unit", "hall"]
    assert all(len(row) == len(COLUMNS) for row in table.rows)
    terrace = read_sample("terrace")
    quick = fit_plan_table(fit_plan(terrace, CATALOGUE, is_quick=True), terrace, CATALOGUE)
    assert {row[14] for row in quick.rows} == {"not tried"}
