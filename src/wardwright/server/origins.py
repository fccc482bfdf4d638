"""Who asks: the server's own page, or one that came from elsewhere."""

from __future__ import annotations

from collections.abc import Mapping


def is_from_elsewhere(headers: Mapping[str, str]) -> bool:
    """Whether a request or a link was begun by a page of another origin.

    Parameters
    ----------
    headers : mapping of str
        The request's own, by small-letter name.

    Returns
    -------
    bool
        False too where no page began it: then no origin is named.

    Examples
    --------
    >>> is_from_elsewhere({"origin": "http://localhost:8737", "host": "localhost:8737"})
    False
    >>> is_from_elsewhere({"origin": "http://evil.example", "host": "localhost:8737"})
    True
    """
    origin = headers.get("origin")
    return origin is not None and origin.partition("://")[2] != headers.get("host", "")
