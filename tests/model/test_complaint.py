import pytest

from common.broken import hut
from wardwright.errors import DocumentError

WIN = 'hut, openings[1] "kitchen window" (kitchen-window): '
UNIT = 'hut, devices[0] "control unit" (unit): '


@pytest.mark.parametrize(
    ("path", "value", "message"),
    [
        (
            "openings/kitchen-window/colour",
            1,
            WIN
            + "key 'colour' is not known. Take it out; the keys known here are basis, id, name, kind, wall, ",
        ),
        (
            "openings/kitchen-window/widht_m",
            1.0,
            WIN + "key 'widht_m' is not known; did you mean 'width_m'. ",
        ),
        ("openings/kitchen-window/width_m", ..., WIN + "key 'width_m' is missing. Add 'width_m'."),
        (
            "openings/kitchen-window/width_m",
            True,
            WIN + "'width_m' should be a number, but is true. Write a number.",
        ),
        (
            "openings/kitchen-window/width_m",
            None,
            WIN + "'width_m' should be a number, but is nothing (null). ",
        ),
        (
            "openings/kitchen-window/width_m",
            99,
            WIN + "'width_m' is 99, but must be at most 12. Give a number that ",
        ),
        (
            "openings/kitchen-window/leaves",
            1.5,
            WIN + "'leaves' should be a whole number, but is the number 1.5. ",
        ),
        ("openings/kitchen-window/leaves", -1, WIN + "'leaves' is -1, but must be at least 0. "),
        (
            "openings/kitchen-window/is_locked",
            1,
            WIN + "'is_locked' should be true or false, but is the number 1. ",
        ),
        (
            "openings/kitchen-window/name",
            ["x"],
            WIN.replace('"kitchen window" ', "") + "'name' should be text in ",
        ),
        ("openings/kitchen-window/joins", ["hall"], WIN + "'joins' has too few entries. Give it 2."),
        (
            "openings/kitchen-window/swing",
            "lefft",
            WIN + "'swing' is the text 'lefft', which is not one of the words allowed; did you mean 'left'. "
            "Use one of 'left', 'right' or 'none'.",
        ),
        (
            "openings/kitchen-window/id",
            "Kitchen Window",
            (
                "hut, openings[1] \"kitchen window\" (Kitchen Window): 'id' is the text 'Kitchen Window', which "
                "cannot be used here. Use small letters, digits, dots and hyphens, "
            ),
        ),
        ("devices/unit/mount/hieght_m", 2.0, UNIT + "key 'hieght_m' is not known; did you mean 'height_m'. "),
        (
            "devices/unit/mount/wall",
            "A wall",
            UNIT + "'wall' is the text 'A wall', which cannot be used here. ",
        ),
        (
            "devices/unit/mount/on",
            "wal",
            UNIT + "'mount' does not say what it is fixed on. Give it an 'on' that ",
        ),
        ("devices/unit/mount", 3, UNIT + "'mount' should be an object in braces, but is the number 3. "),
        ("devices/unit/basis", [1], UNIT + "'basis' should be an object in braces, but is a list. "),
        (
            "devices/unit/basis",
            {"name": "seen"},
            UNIT + "'basis' is the text 'seen', which is not one of the words ",
        ),
        (
            "walls/south/line_m",
            [[0, 0], [1, "a"]],
            "hut, walls[0] (south): 'line_m[1][1]' should be a number, ",
        ),
        ("walls/south/line_m", [[0, 0]], "hut, walls[0] (south): 'line_m' has too few entries. Give it 2."),
        ("walls/south/line_m", [[0, 0]] * 3, "hut, walls[0] (south): 'line_m' has more than 2 entries. "),
        (
            "spaces/hall/outline_m",
            [[0, 0]],
            "hut, spaces[0] \"hall\" (hall): 'outline_m' has 1 entries, but needs 3",
        ),
        ("walls/+", 5, "hut: 'walls[5]' should be an object in braces, but is the number 5. "),
        ("walls", {}, "hut: 'walls' should be a list in square brackets, but is an object in braces. "),
        (
            "wals",
            [],
            "hut: key 'wals' is not known; did you mean 'walls'. Write 'walls', or take the key out.",
        ),
        ("name", ..., "hut: key 'name' is missing. Add 'name'."),
        ("place/latitude_deg", 100, "hut, place: 'latitude_deg' is 100, but must be at most 90. "),
        (
            "place/latitud_deg",
            50,
            "hut, place: key 'latitud_deg' is not known; did you mean 'latitude_deg'. ",
        ),
        (
            "place/country",
            "gb",
            "hut, place: 'country' is the text 'gb', which is no country code. Use its two ",
        ),
        (
            "ground/things",
            [{"id": "oak", "name": "oak", "kind": "oak", "outline_m": [[0, 0], [1, 1]], "height_m": 4}],
            "hut, things[0] \"oak\" (oak): 'kind' is the text 'oak', which is not one of the words allowed. ",
        ),
        (
            "storeys/ground/slopes",
            [{}],
            "hut, storeys[0] \"ground floor\" (ground), slopes[0]: key 'corners_m' is ",
        ),
    ],
    ids=lambda value: value if isinstance(value, str) and "/" in value else "",
)
def test_a_fault_is_said_in_plain_words(path: str, value: object, message: str) -> None:
    with pytest.raises(DocumentError) as caught:
        hut((path, value))
    assert str(caught.value).startswith(message)


def test_a_misspelt_key_that_is_needed_is_named_once() -> None:
    with pytest.raises(DocumentError) as caught:
        hut(("openings/kitchen-window/width_m", ...), ("openings/kitchen-window/widht_m", 1.0))
    assert "more fault" not in str(caught.value)


def test_more_faults_are_counted() -> None:
    with pytest.raises(DocumentError, match=r"\(and 2 more faults\)"):
        hut(("walls/south/a", 1), ("walls/north/b", 1), ("walls/west/c", 1))
