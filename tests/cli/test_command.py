from __future__ import annotations

from argparse import ArgumentParser

from wardwright.cli import command
from wardwright.store.samples import sample_names


def test_statuses_are_told_apart() -> None:
    statuses = [command.FINE, command.MUST_MEND, command.BAD_INPUT, command.OWN_FAULT, command.STOPPED]
    assert statuses == [0, 1, 2, 3, 130]
    assert [status for status, _ in command.STATUSES] == statuses


def test_the_help_names_every_sample() -> None:
    assert sample_names() == command.SAMPLES


def test_sheets_are_collected_and_none_is_an_empty_list() -> None:
    parser = ArgumentParser()
    command.add_site(parser)
    command.add_sheets(parser)
    assert parser.parse_args(["house.json"]).sheet == []
    given = parser.parse_args(["--sheet", "a.toml", "house.json", "--sheet", "b.toml"])
    assert (given.site, given.sheet) == ("house.json", ["a.toml", "b.toml"])
