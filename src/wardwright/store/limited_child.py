"""The process in which a building file or a drawing is read: limited in time and memory, started by `limited`."""

from __future__ import annotations

import io
import json
import math
import os
import sys
from collections.abc import Callable

from wardwright.errors import IntakeError
from wardwright.intake.report import IntakeReport
from wardwright.model.site import Site

OUT_OF_MEMORY = 70
"""The exit status by which the child says that it ran out of memory."""


def _limit(megabytes: int, seconds: float) -> None:
    """Limit this process's own memory and time, where the system can: it must end too if nobody waits for it."""
    try:
        import resource  # noqa: PLC0415 - not on every system
    except ImportError:
        return
    most = megabytes * 1_000_000
    _, hard = resource.getrlimit(resource.RLIMIT_AS)
    if hard != resource.RLIM_INFINITY:
        most = min(most, hard)
    resource.setrlimit(resource.RLIMIT_AS, (most, hard))
    whole = math.ceil(seconds) + 1
    resource.setrlimit(resource.RLIMIT_CPU, (whole, whole + 1))


def _child(where: str, limits: tuple[int, float], how: tuple[str, str]) -> int:
    """Read the file given on standard input; write the answer to what was standard output."""
    _limit(*limits)
    # The library may print: whatever it says goes to standard error, the answer to a copy of standard output.
    answer_to = os.dup(1)
    os.dup2(2, 1)
    try:
        answer = _read(sys.stdin.buffer.read(), where, how)
    except MemoryError:
        return OUT_OF_MEMORY
    with os.fdopen(answer_to, "wb") as out:
        out.write(answer.encode())
    return 0


def _read(data: bytes, where: str, how: tuple[str, str]) -> str:
    form, asked = how
    try:
        site, report = _reader(form)(data, where, asked or None)
    except IntakeError as error:
        return json.dumps({"error": {"what": error.what, "where": error.where, "cure": error.cure}})
    # Each is JSON already: put together as text, so that nothing is turned twice.
    return f'{{"site": {site.model_dump_json(exclude_unset=True)}, "report": {report.model_dump_json()}}}'


def _reader(form: str) -> Callable[[bytes, str, str | None], tuple[Site, IntakeReport]]:
    """What reads a form; only this child knows the libraries of IFC and DXF, and only the one it needs."""
    if form == "ifc":
        from wardwright.intake.ifc.reading import read_ifc  # noqa: PLC0415 - see above

        return lambda data, where, asked: read_ifc(data, where=where, premises=asked)
    from wardwright.intake.dxf.reading import read_dxf  # noqa: PLC0415 - see above

    return lambda data, where, asked: read_dxf(io.BytesIO(data), where=where, unit=asked)


if __name__ == "__main__":
    sys.exit(_child(sys.argv[1], (int(sys.argv[2]), float(sys.argv[3])), (sys.argv[4], sys.argv[5])))
