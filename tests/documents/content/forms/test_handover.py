from __future__ import annotations

import pytest

from common.fitted import DAY, as_text, fitted
from wardwright.documents.content.forms.handover import LEAST, MOST, handover
from wardwright.documents.content.paper import Paper, Table
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def table_of(paper: Paper, heading: str) -> Table:
    table = next(one.table for one in paper.sections if one.heading == heading)
    assert table is not None
    return table


@pytest.mark.parametrize("count", [0, 2, 4, 30])
def test_there_is_a_column_for_each_of_the_people_and_none_is_named(count: int) -> None:
    site = fitted()
    people = tuple(
        site.people[0].model_copy(update={"id": f"p{i}", "name": f"Xavier{i}"}) for i in range(count)
    )
    paper = handover(site.model_copy(update={"people": people}), CATALOGUE, (), drawn_up=DAY)
    columns = table_of(paper, "User training record").columns
    assert sum(one.heading == "Initials" for one in columns) == min(max(count, LEAST), MOST)
    assert "Xavier" not in as_text(paper)


def test_keyholders_have_no_place_for_a_code() -> None:
    paper = handover(fitted(), CATALOGUE, (), drawn_up=DAY)
    headings = {
        one.heading.casefold() for section in paper.sections if section.table for one in section.table.columns
    }
    assert not [one for one in headings if "code" in one or "pin" in one.split()]
    assert all(cell == "" for row in table_of(paper, "Keyholders").rows for cell in row)


def test_a_house_without_cameras_has_no_paper_about_them() -> None:
    headings = [one.heading for one in handover(fitted(), CATALOGUE, (), drawn_up=DAY).sections]
    assert "Cameras and the boundary" not in headings


def test_whether_a_camera_sees_beyond_the_boundary_is_told_in_a_word() -> None:
    site = read_sample("bungalow")
    told = table_of(handover(site, CATALOGUE, ask(site, CATALOGUE), drawn_up=DAY), "Cameras and the boundary")
    assert [row[2] for row in told.rows] == ["yes"]
    unasked = table_of(handover(site, CATALOGUE, (), drawn_up=DAY), "Cameras and the boundary")
    assert [row[2] for row in unasked.rows] == ["not known"]


def test_the_end_of_updates_stands_without_the_place() -> None:
    rows = table_of(handover(fitted(), CATALOGUE, (), drawn_up=DAY), "Connected products").rows
    assert [row[0] for row in rows] == ["control unit"]
