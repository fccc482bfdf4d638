"""Shares of seeded trials in words: in per cent, with their interval."""

from __future__ import annotations

from wardwright.trials.campaign.shares import Share

NO_TRIAL = "no trial"


def percent(share: Share) -> str:
    """A share with its interval, in per cent."""
    if share.value is None:
        return NO_TRIAL
    return f"{hundredths(share.value)} % ({hundredths(share.low)} to {hundredths(share.high)})"


def percent_alone(share: Share) -> str:
    """A share without its interval, in per cent."""
    return NO_TRIAL if share.value is None else f"{hundredths(share.value)} %"


def hundredths(value: float) -> str:
    """A share in per cent; a few of very many are never none, nor all.

    Examples
    --------
    >>> hundredths(0.523), hundredths(0.0002), hundredths(1.0)
    ('52.3', 'under 0.1', '100.0')
    """
    shown = f"{100.0 * value:.1f}"
    if shown == "0.0" and value > 0.0:
        return "under 0.1"
    return "over 99.9" if shown == "100.0" and value < 1.0 else shown
