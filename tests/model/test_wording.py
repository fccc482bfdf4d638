import pytest

from wardwright.model.wording import and_more, holds_secret, label, masked, shown, suggestion


@pytest.mark.parametrize(
    "text",
    [
        "code 4711",
        "the PIN is 471122",
        "Code: 4711",
        "unit-code-4711",
        "pin no. 12345678",
        "passcode=0000",
        "codes 1234",
    ],
)
def test_what_looks_like_a_code_is_found_and_starred(text: str) -> None:
    assert holds_secret(text)
    assert not any(digit in masked(text) for digit in "0123456789")


@pytest.mark.parametrize(
    "text",
    [
        "code lock",
        "post code 10115",
        "postcode 10115",
        "zip code 90210",
        "pine 1234",
        "room 4711",
        "code 123",
        "barcode 4711",
    ],
)
def test_what_is_no_code_is_left(text: str) -> None:
    assert not holds_secret(text)
    assert masked(text) == text


def test_a_label_has_what_there_is() -> None:
    assert label("walls", 2, {"id": "w"}) == "walls[2] (w)"
    assert label("walls", 2, {}) == "walls[2]"
    assert (
        label("devices", 0, {"id": "unit", "name": "unit\ncode 4711"}) == 'devices[0] "unit code ****" (unit)'
    )


def test_a_value_is_shown_short() -> None:
    assert shown("a" * 100) == "the text '" + "a" * 57 + "...'"
    assert [shown(v) for v in (None, True, 3, [], {})] == [
        "nothing (null)",
        "true",
        "the number 3",
        "a list",
        "an object in braces",
    ]


def test_nothing_near_gives_no_suggestion() -> None:
    assert suggestion("x", []) is None
    assert suggestion("kitchn", ["hall", "kitchen"]) == "kitchen"


def test_one_fault_and_no_more() -> None:
    assert and_more(-1) == ""
