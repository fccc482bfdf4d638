import pytest
from pydantic import ValidationError

from wardwright.model.surroundings import Ground, GroundThing


def test_a_boundary_nobody_drew_is_not_known() -> None:
    assert (Ground().boundary_m, Ground().road_m) == (None, None)


def test_a_thing_outside_has_a_height() -> None:
    with pytest.raises(ValidationError, match="height_m"):
        GroundThing(id="t", name="t", kind="tree", outline_m=((0.0, 0.0), (1.0, 0.0)), height_m=0.0)
