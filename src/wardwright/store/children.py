"""A child process that is waited for, up to a time, and ended at once when nobody wants it any more."""

from __future__ import annotations

import subprocess
import time
from collections.abc import Callable, Mapping, Sequence
from typing import BinaryIO

from wardwright.errors import Stopped

LOOK_S = 0.05
"""Between two looks at whether it is still wanted. [s]"""


def ran(
    command: Sequence[str],
    content: BinaryIO,
    *,
    seconds: float,
    environment: Mapping[str, str],
    is_stopped: Callable[[], bool] | None = None,
) -> subprocess.CompletedProcess[bytes]:
    """Run a command to its end.

    Parameters
    ----------
    command : sequence of str
        The program and its arguments; no shell reads them.
    content : BinaryIO
        What it reads as its standard input: a file of the system, from where it stands.
    seconds : float
        How long it may take. [s]
    environment : mapping of str
        Its environment.
    is_stopped : callable, optional
        Whether it is wanted no more.

    Returns
    -------
    CompletedProcess
        What it said.

    Raises
    ------
    subprocess.TimeoutExpired
        If it took too long; it is ended then.
    Stopped
        If it was wanted no more; it is ended then.
    """
    end = time.monotonic() + seconds
    with subprocess.Popen(  # noqa: S603 - no shell; callers run our own interpreter
        list(command),
        stdin=content,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        env=dict(environment),
    ) as child:
        try:
            while True:
                left = end - time.monotonic()
                try:
                    said, complained = child.communicate(timeout=max(0.0, min(LOOK_S, left)))
                except subprocess.TimeoutExpired:
                    if is_stopped is not None and is_stopped():
                        raise Stopped("it was stopped") from None
                    if time.monotonic() >= end:
                        raise
                else:
                    return subprocess.CompletedProcess(command, child.returncode, said, complained)
        except BaseException:
            child.kill()
            raise
