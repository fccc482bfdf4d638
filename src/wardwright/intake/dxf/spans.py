"""Intervals along a line: where faces run, what of them is still free."""

from __future__ import annotations

from collections.abc import Iterable

Span = tuple[float, float]
"""From and to along a line. [m]"""


def merged(spans: Iterable[Span], *, gap: float = 0.0) -> list[Span]:
    """The spans in order, those that meet or stand no farther apart than a gap joined.

    Examples
    --------
    >>> merged([(2.0, 3.0), (0.0, 1.0), (1.0, 1.5)])
    [(0.0, 1.5), (2.0, 3.0)]
    """
    found: list[Span] = []
    for start, end in sorted(spans):
        if found and start <= found[-1][1] + gap:
            found[-1] = (found[-1][0], max(found[-1][1], end))
        else:
            found.append((start, end))
    return found


def common(one: Iterable[Span], other: Iterable[Span]) -> list[Span]:
    """What two lists of spans share.

    Examples
    --------
    >>> common([(0.0, 2.0)], [(1.0, 3.0), (4.0, 5.0)])
    [(1.0, 2.0)]
    """
    others = list(other)
    both = [(max(a, c), min(b, d)) for a, b in one for c, d in others]
    return [(start, end) for start, end in both if end > start]


def less(spans: Iterable[Span], taken: Iterable[Span]) -> list[Span]:
    """What is left of spans once others are taken away.

    Examples
    --------
    >>> less([(0.0, 3.0)], [(1.0, 2.0)])
    [(0.0, 1.0), (2.0, 3.0)]
    """
    left = list(spans)
    for start, end in taken:
        parts = [((a, min(b, start)), (max(a, end), b)) for a, b in left]
        left = [(a, b) for pair in parts for a, b in pair if b > a]
    return left
