from __future__ import annotations

import socket
from pathlib import Path

import pytest

from common.served import Served
from wardwright.cli.command import BAD_INPUT
from wardwright.cli.main import main
from wardwright.cli.serve import HOST, listening
from wardwright.errors import InputError


def test_it_answers_on_this_machine_until_it_is_stopped(tmp_path: Path) -> None:
    served = Served(tmp_path)
    assert served.said("") == []
    served.stop()


def test_only_loopback_is_listened_on() -> None:
    listener = listening(0)
    assert (HOST, listener.getsockname()[0]) == ("127.0.0.1", "127.0.0.1")
    listener.close()


def test_a_port_that_is_taken_and_a_folder_that_is_not_there_are_said(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    with socket.socket() as taken:
        taken.bind((HOST, 0))
        taken.listen()
        with pytest.raises(InputError, match="cannot be had"):
            listening(taken.getsockname()[1])
    with pytest.raises(InputError, match="cannot be had"):
        listening(99999)
    assert main(["serve", str(tmp_path / "nowhere")]) == BAD_INPUT
    assert "there is no such folder" in capsys.readouterr().err
