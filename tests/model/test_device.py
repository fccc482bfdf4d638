import pytest
from pydantic import ValidationError

from wardwright.model.device import CeilingMount, Device, FreeMount, OpeningMount, WallMount

MOUNTS = {
    "wall": ({"wall": "w", "side": "left", "offset_m": 1.0, "height_m": 2.2}, WallMount),
    "ceiling": ({"storey": "ground", "at_m": (1.0, 1.0)}, CeilingMount),
    "opening": ({"opening": "o"}, OpeningMount),
    "free": ({"storey": "ground", "at_m": (1.0, 1.0)}, FreeMount),
}


@pytest.mark.parametrize("on", sorted(MOUNTS))
def test_the_mount_is_told_by_what_it_is_on(on: str) -> None:
    keys, kind = MOUNTS[on]
    device = Device.model_validate({"id": "d", "name": "d", "sheet": "s", "mount": {"on": on, **keys}})
    assert type(device.mount) is kind


def test_a_gap_nobody_measured_is_not_known() -> None:
    assert OpeningMount(opening="o").gap_m is None


def test_a_tilt_past_upright_is_refused() -> None:
    with pytest.raises(ValidationError, match="tilt_deg"):
        Device(id="d", name="d", sheet="s", mount=OpeningMount(opening="o"), tilt_deg=120.0)
