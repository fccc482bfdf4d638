"""Whatever is put in the place of any value of a good document: one plain message, or a site; never a crash."""

import copy
import json
from typing import Any

from hypothesis import example, given
from hypothesis import strategies as st

from common.broken import GOOD
from wardwright.errors import DocumentError
from wardwright.model.document import read_document, write_document
from wardwright.model.validation import problems
from wardwright.store.catalogue import load_catalogue

DATA = json.loads(GOOD.read_text(encoding="utf-8"))
Path = tuple[int | str, ...]


def paths(value: Any, here: Path = ()) -> list[Path]:
    inner: list[tuple[int | str, Any]] = []
    if isinstance(value, dict):
        inner = list(value.items())
    elif isinstance(value, list):
        inner = list(enumerate(value))
    return [here, *(path for key, part in inner for path in paths(part, (*here, key)))]


def value_at(data: Any, path: Path) -> Any:
    for step in path:
        data = data[step]
    return data


def changed(data: Any, path: Path, value: Any) -> Any:
    if not path:
        return value
    whole = copy.deepcopy(data)
    here = whole
    for step in path[:-1]:
        here = here[step]
    here[path[-1]] = value
    return whole


SIMPLE = (
    st.none()
    | st.booleans()
    | st.integers()
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.sampled_from(
        [0, -1, 0.5, 2, 4, 1e-9, 1e9, "", "hall", "ground", "first", "unit", "zone-1", "middle", "front-door"]
    )
    | st.text(max_size=12)
)
POINTS = st.lists(
    st.tuples(st.sampled_from([0, 1, 3, 4, 6]), st.sampled_from([0, 1, 4])).map(list), max_size=6
)
ANY = st.recursive(
    SIMPLE | POINTS,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=5), inner, max_size=3),
)


NUMBERS = [path for path in paths(DATA) if isinstance(value_at(DATA, path), (int, float))]
NASTY = st.sampled_from([0, -1, 1e-9, 1, 2.5, 3, 3.1, 4, 6, 1e3, 1999, 1e9, 1e308, -1e308, 5e-324])


def fault_of(data: Any) -> DocumentError | None:
    try:
        site = read_document(json.dumps(data), where="hut")
    except DocumentError as fault:
        return fault
    assert read_document(write_document(site), where="again") == site
    for problem in problems(site, load_catalogue()):
        assert problem.what
        assert problem.cure
        assert "\n" not in problem.what
    return None


@given(st.sampled_from(paths(DATA)), ANY)
@example(("spaces", 0, "outline_m"), [[0, 0], [0, 0], [0, 0]])
@example(("spaces", 0, "outline_m"), [[0, 0], [1, 0], [2, 0], [3, 0]])
@example(("walls", 4, "line_m"), [[3, 0], [3, 0]])
@example(("stairs", 0, "line_m"), [[1, 1], [1, 1]])
@example(("devices", 0, "mount", "wall"), "unit")
@example((), "just text")
def test_any_change_gives_a_message_or_a_site(path: Path, value: Any) -> None:
    fault = fault_of(changed(DATA, path, value))
    if fault is not None:
        assert fault.what
        assert fault.cure
        assert len(str(fault)) < 1200


@given(st.lists(st.tuples(st.sampled_from(NUMBERS), NASTY), min_size=1, max_size=4))
def test_nasty_numbers_give_a_message_or_a_site(edits: list[tuple[Path, float]]) -> None:
    data = DATA
    for path, value in edits:
        data = changed(data, path, value)
    fault_of(data)
