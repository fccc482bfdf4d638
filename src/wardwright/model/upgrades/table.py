"""The steps that bring an older site document up to the newest form: one small function a version, kept for ever."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

Step = Callable[[dict[str, Any]], dict[str, Any]]
"""Takes the plain data of one version and returns that of the next; it may change what it is given."""

UPGRADES: Mapping[int, Step] = {}
"""From each older version, the step to the next. Version 1 is the first, so there is none yet."""


def upgraded(
    data: dict[str, Any], *, found: int, newest: int, steps: Mapping[int, Step] = UPGRADES
) -> dict[str, Any] | None:
    """Bring plain data up to the newest version, one step at a time.

    Parameters
    ----------
    data : dict
        A site document as plain data.
    found : int
        The version it is in.
    newest : int
        The version wanted.
    steps : mapping of int to callable
        From each older version, the step to the next.

    Returns
    -------
    dict or None
        The data in the newest version; None when a step is missing.

    Examples
    --------
    >>> upgraded({"colour": 1}, found=1, newest=2, steps={1: lambda d: {"shade": d["colour"]}})
    {'shade': 1, 'schema_version': 2}
    """
    for version in range(found, newest):
        step = steps.get(version)
        if step is None:
            return None
        data = step(data)
        data["schema_version"] = version + 1
    return data
