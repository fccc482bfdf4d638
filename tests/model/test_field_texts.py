"""What the docstrings under fields say reaches the schema, and only when one is made."""

from __future__ import annotations

from wardwright.model.field_texts import field_texts
from wardwright.model.record import Marked, Record
from wardwright.model.surroundings import GroundThing


class Plain(Record):
    """A record for this test."""

    first_m: float
    """How long.

    And a second line. [m]"""
    untold: int = 0
    name: str = ""
    """What it is called."""


def test_the_texts_are_those_under_the_fields() -> None:
    assert field_texts(Plain) == {
        "first_m": "How long.\n\nAnd a second line. [m]",
        "name": "What it is called.",
    }


def test_a_record_has_the_texts_of_what_it_is_made_from() -> None:
    texts = field_texts(GroundThing)
    assert texts["basis"] == field_texts(Marked)["basis"]
    assert "Its top above the ground. [m]" in texts.values()


def test_the_schema_says_them() -> None:
    properties = Plain.model_json_schema()["properties"]
    assert properties["name"]["description"] == "What it is called."
    assert "description" not in properties["untold"]


def test_a_record_that_is_made_reads_no_source() -> None:
    assert Plain.model_fields["name"].description is None
