from __future__ import annotations

import pytest

from wardwright.errors import NotesError
from wardwright.intake.notes.clauses import Clauses, Grammar, known_words, read_clauses
from wardwright.intake.notes.lengths import cut
from wardwright.intake.notes.words import Line

GRAMMAR = Grammar(
    after=frozenset({"wide", "high"}),
    lengths=frozenset({"sill"}),
    quantities={"entry": ("s",)},
    words={"lock": ("latch", "deadlock"), "bed": None},
    lists=frozenset({"stays"}),
    flags=frozenset({"fixed"}),
    sizes=frozenset({2}),
    takes_side=True,
    takes_ends=True,
    takes_weight=True,
)


def read(text: str, grammar: Grammar = GRAMMAR) -> Clauses:
    return read_clauses(Line(cut(text, where="x"), where="x"), grammar)


def test_clauses_may_stand_in_any_order() -> None:
    parts = [
        "0.8 wide",
        "sill 0.9",
        "0.4 from its north end",
        "lock deadlock",
        "stays hall kitchen",
        "fixed",
        "corner north-west",
        "30 kg",
        "1.2 x 1.1",
        "entry 20 s",
        "as front-door",
    ]
    first, last = read(", ".join(parts)), read(", ".join(reversed(parts)))
    for found in (first, last):
        assert found.measures == {"wide": 0.8, "sill": 0.9, "weight": 30, "entry": 20}
        assert found.ends == {"north": 0.4}
        assert found.words == {"lock": "deadlock", "as": "front-door"}
        assert found.lists == {"stays": ("hall", "kitchen")}
        assert (found.flags, found.side, found.size) == ({"fixed"}, "north-west", (1.2, 1.1))


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("0.8 wide 0.9 wide", "'wide' is given twice"),
        ("sill 1 sill 2", "'sill' is given twice"),
        ("north south", "the place is given twice"),
        ("1 x 2, 3 x 4", "the size is given twice"),
        ("1 x 2 x 3", "a size of 3 lengths does not fit here"),
        ("0.8", "nothing says what '0.8' is. Follow it with from SIDE or high or wide"),
        ("lock bolt", "'bolt' is not a word for 'lock'"),
        ("stays fixed", "nothing follows 'stays'"),
        ("0.4 from top", "'top' is not a side"),
        ("measured guessed", "both measured and guessed"),
        ("widee", "Did you mean 'wide'"),
        ('"what"', "'what' is not understood here"),
        ("sill 20 kg", "'20 kg' does not fit here"),
    ],
)
def test_a_clause_that_cannot_be_is_refused(text: str, message: str) -> None:
    with pytest.raises(NotesError, match=message):
        read(text)


def test_other_words_are_kept_only_where_the_line_takes_them() -> None:
    assert read('small "tv set" fixed', Grammar(takes_names=True, flags=frozenset({"fixed"}))).names == [
        "small",
        "tv set",
    ]


def test_the_known_words_are_those_of_the_grammar() -> None:
    assert known_words(Grammar(flags=frozenset({"fixed"}))) == ["as", "fixed", "guessed", "measured", "named"]
    assert {"north", "from", "wide", "stays"} <= set(known_words(GRAMMAR))
