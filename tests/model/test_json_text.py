from __future__ import annotations

import pytest

from wardwright.errors import DocumentError
from wardwright.model.json_text import DEEPEST, plain_json


def test_an_object_is_read() -> None:
    assert plain_json('\ufeff{"a": [1, 2.5, null]}', where="x") == {"a": [1, 2.5, None]}


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("{", "this is not JSON"),
        ("[1]", "an object in braces"),
        ('{"a": NaN}', "the value NaN is not a number"),
        ('{"a": 1, "a": 2}', "key 'a' is written twice"),
        ('{"a": ' + "[" * (DEEPEST + 1) + "]" * (DEEPEST + 1) + "}", "deep within one another"),
        ('{"a": ' + "[" * 100_000, "deep within one another|this is not JSON"),
        ('{"a": ' + "1" * 5000 + "}", "thousands of digits"),
    ],
)
def test_what_the_ordinary_reader_lets_pass_is_refused(text: str, message: str) -> None:
    with pytest.raises(DocumentError, match=message):
        plain_json(text, where="x")
