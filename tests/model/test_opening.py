import pytest
from pydantic import ValidationError

from wardwright.model.opening import Opening

KEYS = {"id": "o", "name": "o", "kind": "window", "wall": "w", "offset_m": 1.0, "width_m": 0.9}


def test_what_was_not_said_of_an_opening_is_the_careful_default() -> None:
    opening = Opening.model_validate(KEYS)
    assert (opening.lock, opening.glazing, opening.joins, opening.is_entry_door) == (
        "unknown",
        None,
        None,
        False,
    )
    assert opening.basis_of("lock") == "default"


@pytest.mark.parametrize("wrong", [{"width_m": 0.0}, {"offset_m": -0.1}, {"leaves": -1}, {"kind": "portal"}])
def test_what_no_opening_is_is_refused(wrong: dict[str, object]) -> None:
    with pytest.raises(ValidationError):
        Opening.model_validate(KEYS | wrong)
