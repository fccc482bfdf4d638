"""A small share of the fuzzing of `prove`, always the same; and that the fuzzing itself sees what goes wrong."""

from __future__ import annotations

import sys
from collections.abc import Callable

import numpy as np
import pytest

from fuzzing import apart
from fuzzing.apart import tried_apart
from fuzzing.kinds import KINDS, Kind
from fuzzing.trying import tried
from wardwright.cli import check, main
from wardwright.errors import InputError

BY_NAME = {kind.name: kind for kind in KINDS}
FEW = {"document": 16, "notes": 16, "sheet": 16}
FORKS = pytest.mark.skipif(sys.platform == "win32", reason="this system cannot fork")


@pytest.mark.parametrize("kind", [kind for kind in KINDS if not kind.is_limited], ids=lambda kind: kind.name)
def test_damaged_inputs_get_one_message_or_an_answer(kind: Kind) -> None:
    for seed in range(FEW[kind.name]):
        data, _ = kind.made(seed)
        outcome = tried(kind, data, kind.commands[0])
        assert outcome.wrong == "", (seed, outcome)


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_whole_ones_are_taken(kind: Kind) -> None:
    smallest = min(kind.whole(), key=len)
    outcome = tried(kind, smallest, kind.commands[0])
    assert outcome.wrong == ""
    assert outcome.status in {0, 1}, outcome.said


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_a_seed_damages_the_same_way_again(kind: Kind) -> None:
    small = min(kind.whole(), key=len)
    made = [kind.damaged(small, seed) for seed in range(8)]
    assert made == [kind.damaged(small, seed) for seed in range(8)]
    assert len({*made, small}) > 6


@FORKS
@pytest.mark.parametrize("kind", [kind for kind in KINDS if kind.is_limited], ids=lambda kind: kind.name)
def test_one_that_is_read_in_a_process_of_its_own_gets_one_message_or_an_answer(kind: Kind) -> None:
    seed = next(n for n in range(99) if len(kind.made(n)[0]) < 100_000)
    outcome = tried_apart(kind, seed)
    assert outcome.wrong == "", outcome
    assert outcome.seconds > 0


@FORKS
def test_the_memory_of_whoever_asks_is_not_that_of_an_input(monkeypatch: pytest.MonkeyPatch) -> None:
    def hungry(*_: object) -> tuple[int, str, str]:
        taken = np.ones(40_000_000)  # 320 MB
        return 0, str(taken.size), ""

    monkeypatch.setattr(apart, "tried", hungry)
    monkeypatch.setattr(apart, "MEGABYTES", 450)
    kind = next(kind for kind in KINDS if kind.is_limited)
    held = np.ones(60_000_000)  # 480 MB: already more than an input may take
    outcome = tried_apart(kind, 0)
    assert outcome.wrong == ""
    assert 280.0 < outcome.megabytes < 450.0
    monkeypatch.setattr(apart, "MEGABYTES", 200)
    assert tried_apart(kind, 0).wrong.startswith("took ")
    assert held.size


def crashing(_: object) -> int:
    raise ZeroDivisionError("by zero")


def noisy(_: object) -> int:
    sys.stderr.write("some warning\n")
    return 0


def half_done(_: object) -> int:
    sys.stdout.write("done\n")
    raise InputError("it is wrong", where="x", cure="mend it")


def long_winded(_: object) -> int:
    raise InputError("x" * 2000, where="x", cure="read it")


@pytest.mark.parametrize(
    ("run", "wrong"),
    [
        (crashing, "exit status 3"),
        (lambda _: 0, "says nothing"),
        (lambda _: 77, "exit status 77"),
        (noisy, "error stream"),
        (half_done, "then refused"),
        (long_winded, "letters"),
    ],
)
def test_what_goes_wrong_is_seen(
    run: Callable[[object], int], wrong: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(main, "COMMANDS", (check.COMMAND._replace(run=run),))
    assert wrong in tried(BY_NAME["document"], b"{}", ("check", "FILE")).wrong
