from __future__ import annotations

import inspect

import pytest

from wardwright import errors


def test_a_message_says_where_what_and_what_to_do() -> None:
    fault = errors.DocumentError("the door is wider than its wall", where="door-1", cure="Make it narrower")
    assert str(fault) == "door-1: the door is wider than its wall. Make it narrower."
    assert (fault.what, fault.where, fault.cure) == (
        "the door is wider than its wall", "door-1", "Make it narrower",
    )  # fmt: skip


def test_every_error_is_one_of_ours_and_in_the_tree_at_the_top() -> None:
    found = [
        value
        for value in vars(errors).values()
        if inspect.isclass(value) and issubclass(value, BaseException)
    ]
    assert all(issubclass(one, errors.WardwrightError) for one in found)
    assert [one.__name__ for one in found if one.__name__ not in str(errors.__doc__)] == []


@pytest.mark.parametrize("kind", [errors.InputError, errors.GeometryError])
def test_callers_may_catch_the_built_in_kind(kind: type[Exception]) -> None:
    assert issubclass(kind, ValueError)


def test_not_computable_is_no_bad_input() -> None:
    assert not issubclass(errors.NotComputable, (errors.InputError, ValueError))
