import pytest
from pydantic import ValidationError

from wardwright.model.place import Place


def test_an_unknown_north_is_not_zero() -> None:
    assert Place().north_deg is None


@pytest.mark.parametrize(
    "wrong", [{"latitude_deg": 91}, {"longitude_deg": -181}, {"country": "gb"}, {"rule_pack": "x"}]
)
def test_what_is_nowhere_is_refused(wrong: dict[str, object]) -> None:
    with pytest.raises(ValidationError):
        Place.model_validate(wrong)
