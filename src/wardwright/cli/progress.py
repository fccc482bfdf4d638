"""A line on the error stream that says that long work goes on; nothing where nobody watches."""

from __future__ import annotations

import sys
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager

QUIET_S = 1.0
"""Work shorter than this is not announced. [s]"""
STEP_S = 0.5
"""Between two looks at the clock. [s]"""
CLEAR_LINE = "\r\x1b[K"


@contextmanager
def progress(doing: str) -> Iterator[None]:
    """Show what is being done and for how long, while the block runs.

    Parameters
    ----------
    doing : str
        What is being done, such as `asking the house`.
    """
    if not sys.stderr.isatty():
        yield
        return
    done = threading.Event()
    teller = threading.Thread(target=_tell, args=(doing, done), daemon=True)
    teller.start()
    try:
        yield
    finally:
        done.set()
        teller.join()


def _tell(doing: str, done: threading.Event) -> None:
    start = time.monotonic()
    if done.wait(QUIET_S):
        return
    while True:
        print(
            f"{CLEAR_LINE}{doing} ... {time.monotonic() - start:.0f} s", end="", file=sys.stderr, flush=True
        )
        if done.wait(STEP_S):
            break
    print(CLEAR_LINE, end="", file=sys.stderr, flush=True)
