"""`wardwright quote`."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from wardwright.cli.command import BAD_INPUT, FINE
from wardwright.cli.main import main


def test_a_quote_is_printed_and_its_lines_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "quote.csv"
    assert main(["quote", "sample:one-room", "--firm", "sample:example-alarms", "-o", str(out)]) == FINE
    said = capsys.readouterr().out
    assert "by Example Alarms" in said
    assert "1. The design as it stands" in said
    assert "check with the local rules" in said
    assert out.read_text(encoding="utf-8-sig").startswith("Option,Line,Code,What")


def test_json_is_a_quote(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["quote", "sample:one-room", "--json"]) == FINE
    found = json.loads(capsys.readouterr().out)
    assert found["currency"] == "GBP"
    assert found["options"][0]["gross"] is not None


def test_own_prices_count(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    prices = tmp_path / "prices.csv"
    prices.write_text("code,price\nkeypad-radio,1.00\n", encoding="utf-8")
    assert main(["quote", "sample:one-room", "--prices", str(prices)]) == FINE
    assert "no price is known" in capsys.readouterr().out.lower()


@pytest.mark.parametrize(
    ("option", "name", "text", "said"),
    [
        (
            "--prices",
            "prices.csv",
            "code,cost\nx,-1\n",
            "row 2: column 'cost' is '-1', which is below nought",
        ),
        ("--firm", "firm.toml", 'name = "x"\nrate = 1\n', "key 'rate' is not known"),
    ],
)
def test_bad_files_are_one_message(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], option: str, name: str, text: str, said: str
) -> None:
    (tmp_path / name).write_text(text, encoding="utf-8")
    assert main(["quote", "sample:one-room", option, str(tmp_path / name)]) == BAD_INPUT
    assert said in capsys.readouterr().err
