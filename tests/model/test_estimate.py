import pytest
from pydantic import ValidationError

from wardwright.model.estimate import Driver, Estimate, driver_of


def test_an_estimate_is_compared_by_value() -> None:
    drivers = (Driver(name="pace", swing=2.0, basis="default"),)
    one = Estimate(value=1.0, low=0.5, high=2.0, unit="s", drivers=drivers)
    assert one == Estimate(value=1.0, low=0.5, high=2.0, unit="s", drivers=drivers)
    assert one != Estimate(value=1.0, low=0.5, high=2.1, unit="s", drivers=drivers)


def test_what_is_no_number_is_no_estimate() -> None:
    with pytest.raises(ValidationError, match="finite"):
        Estimate(value=float("nan"), low=0.0, high=1.0, unit="s")


def test_one_driver_is_one_object() -> None:
    one = driver_of("pace", 2.0, "default")
    assert one == Driver(name="pace", swing=2.0, basis="default")
    assert driver_of("pace", 2.0, "default") is one
    assert driver_of("pace", 2.0, "told") != one
