import math

import pytest

from wardwright.physics.constants import LIGHT_M_S, VACUUM_F_M


def test_the_two_make_the_magnetic_constant() -> None:
    # 4 pi 1e-7 H/m to nine digits, as before 2019: 1 / (permittivity c^2).
    magnetic = 1.0 / (VACUUM_F_M * LIGHT_M_S**2)
    assert magnetic == pytest.approx(4e-7 * math.pi, rel=1e-8)
