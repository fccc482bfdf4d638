from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from wardwright import __version__
from wardwright.cli import ask, main
from wardwright.cli.command import BAD_INPUT, FINE, MUST_MEND, OWN_FAULT, STOPPED
from wardwright.errors import DocumentError, NotComputable
from wardwright.store.samples import read_sample
from wardwright.store.sites import write_site


def raising(fault: BaseException) -> object:
    def run(_: object) -> int:
        raise fault

    return ask.COMMAND._replace(run=run)


def told(monkeypatch: pytest.MonkeyPatch, fault: BaseException) -> int:
    monkeypatch.setattr(main, "COMMANDS", (raising(fault),))
    return main.main(["ask", "site.json"])


@pytest.mark.parametrize(
    ("fault", "status", "said"),
    [
        (
            DocumentError(
                "the door is wider than its wall", where="site.json, door-1", cure="Make it narrower"
            ),
            BAD_INPUT,
            "wardwright: site.json, door-1: the door is wider than its wall. Make it narrower.\n",
        ),
        (
            FileNotFoundError(2, "No such file", "x.json"),
            BAD_INPUT,
            "wardwright: x.json: No such file. Check the",
        ),
        (
            NotComputable("there is no keypad"),
            BAD_INPUT,
            "wardwright: ask: it could not be worked out: there is no",
        ),
        (KeyboardInterrupt(), STOPPED, "wardwright: stopped\n"),
        (
            ZeroDivisionError("by zero"),
            OWN_FAULT,
            "wardwright: ask: a fault of the program (ZeroDivisionError: by",
        ),
    ],
)
def test_each_fault_gives_one_line_and_its_status(
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
    fault: BaseException,
    status: int,
    said: str,
) -> None:
    assert told(monkeypatch, fault) == status
    streams = capsys.readouterr()
    assert streams.out == ""
    assert streams.err.startswith(said)
    assert streams.err.count("\n") == 1


def test_a_fault_of_the_program_shows_its_place_when_asked(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setenv(main.TRACE, "1")
    assert told(monkeypatch, ZeroDivisionError("by zero")) == OWN_FAULT
    assert "Traceback" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (
            [],
            "wardwright: command line: the following arguments are required: COMMAND. See 'wardwright --help'.",
        ),
        (["look"], "there is no command 'look'"),
        (["ask"], "required: SITE. See 'wardwright ask --help'."),
        (["ask", "a.json", "many"], "argument QUESTION: 'many' is not the number of a question"),
        (["intake", "a.ifc"], "required: -o/--output. See 'wardwright intake --help'."),
        (["check", "a.json", "--fast"], "unrecognized arguments: --fast"),
    ],
)
def test_wrong_usage_is_told_in_the_form_of_all_others(
    capsys: pytest.CaptureFixture[str], arguments: list[str], said: str
) -> None:
    assert main.main(arguments) == BAD_INPUT
    streams = capsys.readouterr()
    assert streams.err.startswith("wardwright: command line: ")
    assert said in streams.err
    assert streams.err.count("\n") == 1


@pytest.mark.parametrize("command", main.COMMANDS, ids=lambda command: command.name)
def test_every_command_has_help(capsys: pytest.CaptureFixture[str], command: main.Command) -> None:
    assert main.main([command.name, "--help"]) == FINE
    text = " ".join(capsys.readouterr().out.split())
    assert command.description.split(".")[0] in text


def test_version_and_help_load_nothing_heavy() -> None:
    program = (
        "import sys; from wardwright.cli.main import main; main(sys.argv[1:]);"
        "heavy = {'numpy', 'scipy', 'shapely', 'pydantic', 'jinja2', 'ifcopenshell', 'typst'} & set(sys.modules);"
        "sys.exit(f'loaded: {heavy}' if heavy else 0)"
    )
    for flag in ("--version", "--help"):
        done = subprocess.run(
            [sys.executable, "-c", program, flag], capture_output=True, text=True, check=False
        )
        assert done.returncode == 0, done.stderr
        assert __version__ in done.stdout or "intake" in done.stdout


def test_as_a_module_it_is_the_same_program() -> None:
    done = subprocess.run(
        [sys.executable, "-m", "wardwright", "--version"], capture_output=True, text=True, check=False
    )
    assert (done.returncode, done.stdout) == (0, f"wardwright {__version__}\n")


def test_the_page_of_commands_is_fresh() -> None:
    script = Path(__file__).resolve().parents[2] / "scripts" / "build-command-pages"
    done = subprocess.run([sys.executable, script, "--check"], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


@pytest.mark.parametrize("more", [[], ["--json"]])
def test_a_terminal_without_umlauts_gets_an_answer(tmp_path: Path, more: list[str]) -> None:
    site = tmp_path / "house.json"
    room = read_sample("one-room")
    devices = tuple(one.model_copy(update={"name": "Küche \u2013 \u03c0"}) for one in room.devices)
    write_site(site, room.model_copy(update={"devices": devices}))
    for command in ("ask", "check"):
        run = subprocess.run(
            [sys.executable, "-m", "wardwright", command, str(site), *more],
            env={**os.environ, "PYTHONIOENCODING": "ascii"},
            capture_output=True,
            check=False,
        )
        assert run.returncode in (FINE, MUST_MEND), run.stderr
        assert run.stdout.isascii()


def test_what_a_terminal_would_obey_is_left_out(capsys: pytest.CaptureFixture[str]) -> None:
    assert main.main(["check", "no\x1b[2Jsuch\u202e.json"]) == BAD_INPUT
    assert capsys.readouterr().err.startswith("wardwright: no[2Jsuch.json: ")


def test_a_command_that_there_is_not_is_named_with_the_nearest(capsys: pytest.CaptureFixture[str]) -> None:
    assert main.main(["chekx"]) == BAD_INPUT
    assert "there is no command 'chekx'; did you mean 'check'. See" in capsys.readouterr().err
