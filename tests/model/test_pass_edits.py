"""Saying on the plan where somebody may be while a part is set."""

from __future__ import annotations

from typing import Any

import pytest

from common.night_house import ANN, CHILD, night_house
from wardwright.errors import DocumentError
from wardwright.model.edits import OPERATION, edited
from wardwright.model.household import Pass
from wardwright.model.site import Site

SITE = night_house(people=(ANN, CHILD))


def after(site: Site, may: str, **how: Any) -> tuple[Pass, ...]:
    data = {"do": "let-pass", "person": "ann", "part": "night", "may": may, **how}
    return edited(site, (OPERATION.validate_python(data),)).people[0].passes


def with_passes(*passes: Pass) -> Site:
    return night_house(people=(ANN.model_copy(update={"passes": passes}), CHILD))


def test_a_space_where_somebody_may_be_and_one_where_not() -> None:
    assert after(SITE, "may", spaces=("hall",)) == (Pass(part="night", may=("hall",)),)
    assert after(SITE, "may not", spaces=("kitchen",)) == (Pass(part="night", may_not=("kitchen",)),)


def test_saying_it_otherwise_takes_the_old_word_away() -> None:
    told = with_passes(
        Pass(part="night", may=("hall",), may_not=("kitchen",)), Pass(part="full", may=("hall",))
    )
    assert after(told, "may not", spaces=("hall",)) == (
        Pass(part="full", may=("hall",)),
        Pass(part="night", may_not=("hall", "kitchen")),
    )
    assert after(told, "not told", spaces=("hall", "kitchen")) == (Pass(part="full", may=("hall",)),)


def test_a_line_means_every_space_that_it_crosses() -> None:
    through = {"storey": "ground", "line_m": ((2.0, 1.0), (5.0, 1.0))}
    assert after(SITE, "may", **through) == (Pass(part="night", may=("hall", "kitchen")),)
    # Its end only touches the study.
    touching = {"storey": "ground", "line_m": ((5.0, 1.0), (6.21, 1.0))}
    assert after(SITE, "may", **touching) == (Pass(part="night", may=("hall",)),)


def test_the_bed_is_never_forbidden() -> None:
    assert after(SITE, "may not", spaces=("study", "kitchen")) == (Pass(part="night", may_not=("kitchen",)),)


def test_nobody_else_is_touched_and_what_is_told_of_the_person_stays() -> None:
    data = {"do": "let-pass", "person": "ann", "part": "night", "may": "may", "spaces": ("hall",)}
    site = edited(SITE, (OPERATION.validate_python(data),))
    assert site.people[1] is SITE.people[1]
    assert (site.people[0].pace, site.people[0].bed) == (ANN.pace, ANN.bed)


@pytest.mark.parametrize(
    ("how", "message"),
    [
        ({"spaces": ("attic",)}, "there is no 'attic' any more"),
        ({"person": "bob", "spaces": ("hall",)}, "there is no 'bob' any more"),
        ({"part": "evening", "spaces": ("hall",)}, "there is no 'evening' any more"),
        ({}, "no space is meant"),
        ({"storey": "ground", "line_m": ((20.0, 1.0), (21.0, 1.0))}, "no space is meant"),
    ],
)
def test_what_is_not_there_is_refused(how: dict[str, Any], message: str) -> None:
    with pytest.raises(DocumentError, match=message):
        after(SITE, "may", **how)
