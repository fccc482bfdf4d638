"""Numbers for people: rounded to what their range bears, with their unit."""

from __future__ import annotations

from collections.abc import Sequence

from wardwright.model.estimate import Estimate

UNIT_WORDS = {"m2": "m\u00b2", "deg": "\u00b0", "deg C": "\u00b0C", "s-1": "/s", "-": ""}
"""How a unit is printed where it is not printed as it is written."""
ALWAYS = {"a": "years", "d-1": "a day", "px/m": "px/m"}
"""Units that are printed in words on a terminal too."""
COUNTS = ("devices", "settings", "ways", "openings", "things", "answers", "faults", "tests")
"""Units of what is counted: whole numbers only."""
MINUS = "\u2212"


def step_of(estimate: Estimate) -> float:
    """What an estimate is rounded to: tenths where its range is narrow, else whole units.

    Parameters
    ----------
    estimate : Estimate
        The number and its range.

    Returns
    -------
    float
        0.1 or 1, in the estimate's unit; hundredths of a share, since it is printed in per cent.

    Examples
    --------
    >>> step_of(Estimate(value=12.3, low=9.1, high=16.0, unit="s"))
    0.1
    >>> step_of(Estimate(value=-29.4, low=-38.2, high=-21.0, unit="s"))
    1.0
    """
    if estimate.unit == "-":
        return 0.01
    if estimate.unit in COUNTS:
        return 1.0
    if estimate.unit.startswith("deg"):
        return 1.0
    span = max(estimate.high - estimate.low, 0.0)
    largest = max(abs(estimate.low), abs(estimate.high), abs(estimate.value))
    return 1.0 if span >= 10.0 or largest >= 100.0 else 0.1


def number(value: float, step: float, *, is_plain: bool = False) -> str:
    """One number rounded to a step, with a true minus sign unless it must be plain.

    Examples
    --------
    >>> number(-29.44, 1.0, is_plain=True), number(-0.04, 0.1, is_plain=True), number(8.85, 0.1)
    ('-29', '0.0', '8.8')
    >>> number(0.05, 0.01)
    '0.05'
    """
    decimals = 0 if step >= 1.0 else 1 if step >= 0.1 else 2
    text = f"{value:.{decimals}f}"
    if float(text) == 0.0:
        text = text.lstrip("-")
    return text if is_plain else text.replace("-", MINUS)


def quantity(value: float, unit: str, step: float, *, is_plain: bool = False) -> str:
    """One number with its unit.

    Examples
    --------
    >>> quantity(12.34, "m2", 0.1, is_plain=True), quantity(0.864, "-", 0.01), quantity(61.2, "deg", 1.0)
    ('12.3 m2', '86 %', '61\u00b0')
    >>> quantity(1.0, "ways", 1.0), quantity(2.0, "ways", 1.0)
    ('1 way', '2 ways')
    >>> quantity(1.0, "devices", 1.0), quantity(0.0, "devices", 1.0)
    ('1 device', '0 devices')
    """
    if unit == "-" and -1.0 <= value <= 1.0:
        return f"{number(value * 100.0, 1.0, is_plain=is_plain)} %"
    text = number(value, step if unit != "-" else 0.1, is_plain=is_plain)
    words = unit if is_plain and unit != "-" else UNIT_WORDS.get(unit, unit)
    words = ALWAYS.get(unit, words)
    if unit in COUNTS and text == "1":
        words = unit.removesuffix("s")
    if unit in COUNTS and text == "1":
        words = words.removesuffix("s")
    gap = "" if words == "\u00b0" or not words else " "
    return text + gap + words


def value_words(estimate: Estimate, *, is_plain: bool = False) -> str:
    """The likely value of an estimate; finer than its range bears rather than a nought that hides its sign.

    Examples
    --------
    >>> value_words(Estimate(value=-0.3, low=-20.0, high=7.0, unit="s"), is_plain=True)
    '-0.3 s'
    """
    step = step_of(estimate)
    if step == 1.0 and 0.0 < abs(estimate.value) < 1.0:
        step = 0.1
    return quantity(estimate.value, estimate.unit, step, is_plain=is_plain)


def range_words(estimate: Estimate, *, is_plain: bool = False) -> str:
    """The range of an estimate; nothing where low and high are printed alike.

    Examples
    --------
    >>> range_words(Estimate(value=12.3, low=9.1, high=16.0, unit="s"))
    '9.1 to 16.0 s'
    """
    step = step_of(estimate)
    low = quantity(estimate.low, estimate.unit, step, is_plain=is_plain)
    high = quantity(estimate.high, estimate.unit, step, is_plain=is_plain)
    if low == high:
        return ""
    number_low, _, unit_low = low.partition(" ")
    return f"{number_low if unit_low == high.partition(' ')[2] else low} to {high}"


def with_range(estimate: Estimate, *, is_plain: bool = False) -> str:
    """The likely value, and the range in brackets where it is one.

    Examples
    --------
    >>> with_range(Estimate(value=12.3, low=9.1, high=16.0, unit="s"))
    '12.3 s (9.1 to 16.0 s)'
    >>> with_range(Estimate(value=3.0, low=3.0, high=3.0, unit="m"))
    '3.0 m'
    """
    value, span = value_words(estimate, is_plain=is_plain), range_words(estimate, is_plain=is_plain)
    return f"{value} ({span})" if span else value


def sentence(text: str) -> str:
    """A text with a capital first and a full stop last.

    Examples
    --------
    >>> sentence("nothing would notice")
    'Nothing would notice.'
    """
    text = text.strip()
    if not text:
        return ""
    return text[0].upper() + text[1:] + ("" if text[-1] in ".?!" else ".")


def joined(names: Sequence[str]) -> str:
    """Names as a list that is read aloud.

    Examples
    --------
    >>> joined(["hall", "kitchen", "bath"])
    'hall, kitchen and bath'
    """
    return " and ".join(part for part in (", ".join(names[:-1]), *names[-1:]) if part)
