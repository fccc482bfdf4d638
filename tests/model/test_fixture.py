import pytest
from pydantic import ValidationError

from wardwright.model.fixture import Fixture, Outlet


def test_a_fixture_is_cold_and_low_unless_told_otherwise() -> None:
    box = Fixture(id="f", name="f", storey="g", centre_m=(0.0, 0.0), size_m=(1.0, 1.0))
    assert (box.heat, box.height_m, box.base_m) == ("none", 0.8, 0.0)
    assert box.basis_of("heat") == "default"


def test_a_box_without_depth_and_an_outlet_of_no_kind_are_refused() -> None:
    with pytest.raises(ValidationError, match="size_m"):
        Fixture(id="f", name="f", storey="g", centre_m=(0.0, 0.0), size_m=(1.0, 0.0))
    with pytest.raises(ValidationError, match="kind"):
        Outlet.model_validate({"id": "o", "name": "o", "kind": "gas", "storey": "g", "at_m": (0.0, 0.0)})
