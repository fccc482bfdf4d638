import pytest
from pydantic import ValidationError

from wardwright.model.fabric import Slope, Space, Stair, Storey, Wall


def test_what_was_not_said_of_a_wall_is_a_default_or_not_known() -> None:
    wall = Wall(id="w", storey="ground", line_m=((0.0, 0.0), (1.0, 0.0)))
    assert (wall.construction, wall.is_exterior, wall.height_m) == ("unknown", None, None)
    assert wall.basis_of("thickness_m") == "default"
    assert wall.basis_of("line_m") == "told"


@pytest.mark.parametrize(
    ("record", "keys"),
    [
        (Slope, {"corners_m": ((0.0, 0.0, 1.0), (1.0, 0.0, 1.0))}),
        (Space, {"id": "s", "name": "s", "storey": "g", "outline_m": ((0.0, 0.0), (1.0, 0.0))}),
        (Storey, {"id": "g", "name": "g", "elevation_m": 0.0, "height_m": 0.5}),
        (Stair, {"id": "s", "lower": "a", "upper": "b", "line_m": ((0.0, 0.0),)}),
        (Wall, {"id": "w", "storey": "g", "line_m": ((0.0, 0.0), (1.0, float("nan")))}),
    ],
    ids=["slope", "space", "storey", "stair", "wall"],
)
def test_what_cannot_be_built_is_refused(record: type, keys: dict[str, object]) -> None:
    with pytest.raises(ValidationError):
        record(**keys)
