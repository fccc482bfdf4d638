from __future__ import annotations

import pytest

from wardwright.cli.command import BAD_INPUT, FINE
from wardwright.cli.main import main
from wardwright.cli.rule import WIDTH
from wardwright.rules.page import HEADINGS
from wardwright.rules.table import RULES


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.code)
def test_a_rule_is_printed_by_code_and_by_name(capsys: pytest.CaptureFixture[str], rule: object) -> None:
    assert main(["rule", rule.code]) == FINE
    text = capsys.readouterr().out
    assert text.startswith(f"{rule.code} {rule.name}\n")
    assert [line for line in text.splitlines() if line in HEADINGS] == list(HEADINGS)
    assert max(map(len, text.splitlines())) <= WIDTH
    assert main(["rule", rule.name.upper()]) == FINE
    assert capsys.readouterr().out == text


def test_without_a_code_all_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["rule"]) == FINE
    lines = capsys.readouterr().out.splitlines()
    assert [line.split() for line in lines] == [[rule.code, rule.name] for rule in RULES]


def test_a_misspelt_code_is_told_with_the_nearest(capsys: pytest.CaptureFixture[str]) -> None:
    wrong = RULES[0].code[:-1] + "9"
    assert main(["rule", wrong]) == BAD_INPUT
    said = capsys.readouterr().err
    assert said.startswith("wardwright: ")
    assert f"there is no rule '{wrong}'. Did you mean " in said
