from __future__ import annotations

from typing import get_args

import pytest

from wardwright.documents.content.wording import SIGNS
from wardwright.documents.drawing.overlay import ROLE_ORDER
from wardwright.documents.drawing.signs import sign
from wardwright.model.sketch import Sketch

ROLES = get_args(Sketch.model_fields["role"].annotation)


def test_every_role_has_a_meaning_and_a_place_in_the_key() -> None:
    assert set(SIGNS) == set(ROLES) == set(ROLE_ORDER)


@pytest.mark.parametrize("role", ROLES)
def test_every_role_has_a_sign_of_its_own(role: str) -> None:
    mine = sign(role, key="a", words="a").own.strokes
    assert mine
    assert all(sign(other, key="a", words="a").own.strokes != mine for other in ROLES if other != role)
