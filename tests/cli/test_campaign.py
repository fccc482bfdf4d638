"""`wardwright campaign` at the command line."""

from __future__ import annotations

import json

import pytest

from wardwright.cli import campaign as command
from wardwright.cli.campaign import MOST_TRIALS
from wardwright.cli.command import BAD_INPUT, FINE
from wardwright.cli.main import main


def test_it_prints_and_is_fine(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["campaign", "sample:one-room", "--trials", "2000"]) == FINE
    out = capsys.readouterr().out
    assert "2000 seeded intruders" in out
    assert "WHAT THESE NUMBERS CANNOT KNOW" in out


def test_the_same_seed_prints_the_same(capsys: pytest.CaptureFixture[str]) -> None:
    texts = []
    for seed in ("7", "7", "8"):
        assert main(["campaign", "sample:one-room", "--trials", "500", "--seed", seed, "--json"]) == FINE
        texts.append(capsys.readouterr().out)
    assert texts[0] == texts[1] != texts[2]
    told = json.loads(texts[0])
    assert told["trials"] == 500
    assert told["seed"] == 7
    assert told["cannot_know"]


@pytest.mark.parametrize(
    ("arguments", "words"),
    [
        (["--trials", "0"], f"0 is not between 1 and {MOST_TRIALS}"),
        (["--trials", "many"], "'many' is not a whole number"),
        (["--trials", str(MOST_TRIALS + 1)], f"is not between 1 and {MOST_TRIALS}"),
        (["--seed", "-1"], "-1 is not between 0"),
    ],
)
def test_a_bad_number_is_named(arguments: list[str], words: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["campaign", "sample:one-room", *arguments]) == BAD_INPUT
    assert words in capsys.readouterr().err


def test_its_numbers_are_those_of_the_campaign() -> None:
    assert command.trials("1") == 1
    assert command.seed("0") == 0
