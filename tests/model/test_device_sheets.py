from typing import Any

import pytest
from pydantic import ValidationError

from wardwright.model.device_sheets import CameraSheet, DeviceSheet, GlassBreakSheet, SounderSheet

ROW: dict[str, Any] = {"id": "x", "name": "x", "source": "own", "mark": "assumption"}
CAMERA = {"across_px": 1920, "down_px": 1080, "angle_deg": 90.0, "height_low_m": 2.0, "height_high_m": 3.0}


def test_what_hangs_outside_is_said_by_its_own_table() -> None:
    sounder = SounderSheet(level_dba=100.0, is_outside=True)
    assert DeviceSheet(**ROW, kind="sounder", sounder=sounder).is_outside
    assert DeviceSheet(**ROW, kind="camera", camera=CameraSheet(**CAMERA, is_outside=True)).is_outside
    assert not DeviceSheet(**ROW, kind="camera", camera=CameraSheet(**CAMERA)).is_outside
    assert not DeviceSheet(**ROW, kind="keypad").is_outside


def test_what_a_sheet_leaves_out_is_not_known() -> None:
    sheet = DeviceSheet(**ROW, kind="keypad")
    assert (sheet.life_years, sheet.updates_until, sheet.check_in_min, sheet.mounts) == (None, None, None, ())
    assert GlassBreakSheet(reach_m=6.0).curtained_reach_m == 0.0


def test_a_sheet_states_no_impossible_value() -> None:
    for wrong in ({"life_years": 0.0}, {"check_in_min": -1.0}, {"mounts": ("floor",)}, {"power": "sun"}):
        with pytest.raises(ValidationError):
            DeviceSheet(**ROW, kind="keypad", **wrong)
