import pytest
from pydantic import ValidationError

from wardwright.model.limits import Limit

FACTS = {"id": "l", "name": "l", "value": 1.0, "unit": "m", "source": "own", "mark": "published"}


@pytest.mark.parametrize(
    ("facts", "is_to_be_checked"),
    [
        ({}, False),
        ({"mark": "from memory"}, True),
        ({"is_disputed": True}, True),
        ({"mark": "standard"}, False),
    ],
)
def test_what_is_from_memory_or_disputed_is_to_be_checked(
    facts: dict[str, object], is_to_be_checked: bool
) -> None:
    assert Limit.model_validate(FACTS | facts).is_to_be_checked is is_to_be_checked


def test_its_words_tell_it_from_others_of_its_id() -> None:
    assert Limit.model_validate(FACTS | {"pack": "us"}).words == "l (us)"
    assert Limit.model_validate(FACTS | {"country": "BE"}).words == "l (any, BE)"


def test_a_country_is_two_capitals() -> None:
    with pytest.raises(ValidationError):
        Limit.model_validate(FACTS | {"country": "Belgium"})
