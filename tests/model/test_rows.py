import pytest
from pydantic import ValidationError

from wardwright.model.rows import Row, Source


def test_a_row_has_a_source_and_a_mark_of_those_known() -> None:
    assert Row(id="a", name="a", source="own", mark="assumption").mark == "assumption"
    with pytest.raises(ValidationError):
        Row.model_validate({"id": "a", "name": "a", "source": "own", "mark": "everybody says so"})
    with pytest.raises(ValidationError):
        Row.model_validate({"id": "a", "name": "a", "mark": "assumption"})


def test_a_source_says_how_far_it_was_read() -> None:
    with pytest.raises(ValidationError):
        Source.model_validate({"id": "a", "title": "A book"})
