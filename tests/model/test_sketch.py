import pytest
from pydantic import ValidationError

from wardwright.model.sketch import Sketch


def test_a_sketch_is_places_and_a_role_without_ink() -> None:
    walk = Sketch(role="walk", storey="ground", points=((0.0, 0.0), (1.0, 0.0)), times_s=(0.0, 0.5))
    assert hash(walk) == hash(walk.model_copy())
    with pytest.raises(ValidationError, match="colour"):
        Sketch.model_validate({"role": "walk", "storey": "ground", "colour": "red"})


def test_an_unknown_role_is_refused() -> None:
    with pytest.raises(ValidationError, match="role"):
        Sketch.model_validate({"role": "arrow", "storey": "ground"})
