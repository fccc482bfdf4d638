"""Records: frozen, hashed by content, and each fact knows how it is known."""

from __future__ import annotations

import copy

import pytest
from pydantic import ValidationError

from wardwright.model.fabric import Storey

GROUND = Storey(id="ground", name="Ground", elevation_m=0.0)


def test_a_copy_with_other_content_hashes_as_its_content() -> None:
    kept = hash(GROUND)
    upper = GROUND.model_copy(update={"name": "Upper"})
    assert hash(upper) == hash(Storey(id="ground", name="Upper", elevation_m=0.0))
    assert hash(upper) != kept


def test_the_kept_hash_is_neither_compared_nor_written() -> None:
    hash(GROUND)
    assert Storey(id="ground", name="Ground", elevation_m=0.0) == GROUND
    assert copy.deepcopy(GROUND) == GROUND
    assert GROUND.model_dump(exclude_unset=True) == {"id": "ground", "name": "Ground", "elevation_m": 0.0}


def test_marks_are_in_one_order_however_they_are_written() -> None:
    one = Storey(id="a", name="A", elevation_m=0.0, basis={"name": "told", "elevation_m": "measured"})
    other = Storey(id="a", name="A", elevation_m=0.0, basis={"elevation_m": "measured", "name": "told"})
    assert one == other
    assert hash(one) == hash(other)
    assert one.basis_of("elevation_m") == "measured"
    assert one.basis_of("height_m") == "default"


def test_unknown_keys_and_changes_are_refused() -> None:
    with pytest.raises(ValidationError):
        Storey(id="a", name="A", elevation_m=0.0, hight_m=2.0)
    with pytest.raises(ValidationError):
        GROUND.name = "other"


def test_a_default_and_the_same_value_told_are_two_things() -> None:
    told = Storey(id="ground", name="Ground", elevation_m=0.0, height_m=2.4)
    assert told.height_m == GROUND.height_m
    assert told != GROUND
    assert hash(told) != hash(GROUND)


def test_a_record_is_not_equal_to_what_is_no_record() -> None:
    assert None not in [GROUND, Storey(id="a", name="A", elevation_m=0.0)]
    assert GROUND != "ground"
