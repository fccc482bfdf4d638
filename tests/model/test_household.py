import pytest
from pydantic import ValidationError

from wardwright.model.household import Person, Pet, Target


def test_people_are_roles_and_what_is_not_said_is_a_default() -> None:
    person = Person(id="grandmother", name="grandmother")
    assert (person.pace, person.bed, person.hears_badly) == ("usual", None, False)
    assert person.basis_of("pace") == "default"


def test_a_target_is_a_place_in_a_space_or_anywhere_in_it() -> None:
    assert Target(id="t", name="t", space="s").at_m is None
    with pytest.raises(ValidationError, match="space"):
        Target.model_validate({"id": "t", "name": "t"})


def test_no_pet_is_as_high_as_a_horse() -> None:
    with pytest.raises(ValidationError, match="height_m"):
        Pet(id="p", name="p", height_m=1.7)
