"""A mend as a sentence."""

from __future__ import annotations

from collections.abc import Iterable

from wardwright.documents.content.names import Names, toward
from wardwright.documents.content.quantities import quantity, sentence, with_range
from wardwright.documents.content.wording import ACTIONS, DANGERS, FIELDS
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.rules.dangers import dangers_of
from wardwright.rules.finding import Finding, Mend

Value = str | float | int | bool
SUFFIXES = {"_m2": "m2", "_m": "m", "_s": "s", "_deg": "deg", "_dba": "dB", "_kg": "kg", "_min": "min"}
LOCKS_AND_LIGHTS = ("change-lock", "add-light")
"""The mends that stand first: they hold somebody up, or show them up."""
WHAT = ("sheet", "kind", "behaviour", "without", "part", "what", "field", "lock", "glazing")
"""The values that a mend's first words may name; the first that it has."""
FIRE_CODES = "FIR"
"""How the codes of the rules about smoke, heat and CO alarms begin."""
BROUGHT = {
    "dBA": "At the pillow then:",
    "min": "Sun straight on it in a year then:",
    "a": "Its battery lasts then:",
    "px/m": "Its picture then:",
    "min of work": "Saved:",
    "m": "Room above the animal then:",
    "openings": "Still noticed with the night part set:",
}
"""How it is told what a mend brings, by the unit of that; of a time, how much is in hand."""
SMALL_M = 0.1
"""Lengths below this, such as a contact's gap, are told in millimetres. [m]"""


def mend_sentence(mend: Mend, names: Names, *, is_plain: bool = False) -> str:
    """One mend in words, with what it brings.

    Parameters
    ----------
    mend : Mend
        The cure as data.
    names : Names
        What people call things.
    is_plain : bool, default False
        Plain letters only, for a terminal.

    Returns
    -------
    str
        A sentence, or two.

    Examples
    --------
    >>> move = Mend(action="move-device", subject="md", values=(("height_m", 2.2),))
    >>> mend_sentence(move, Names({"md": "Hall detector"}))
    'Move Hall detector: 2.2 m above the floor.'
    """
    values = dict(mend.values)
    start = ACTIONS[mend.action]
    what = _what(mend, values, names) if "{what}" in start else ""
    text = start.format(name=names.of(mend.subject), what=what)
    changes = _changes(values, names, is_plain=is_plain)
    text = sentence(f"{text}: {', '.join(changes)}" if changes else text)
    if mend.gain is not None:
        brings = "It would hold longer by" if mend.action == "change-lock" else "In hand then:"
        brings = BROUGHT.get(mend.gain.unit, brings)
        text += f" {brings} {with_range(mend.gain, is_plain=is_plain)}."
    return text


def cautions_of(site: Site, catalogue: Catalogue, mends: Iterable[Mend]) -> tuple[str, ...]:
    """What to beware of in carrying mends out, each caution once.

    Parameters
    ----------
    site, catalogue : Site, Catalogue
        What the mends are about.
    mends : iterable of Mend
        One or more.

    Returns
    -------
    tuple of str
        Sentences, always in the same order; empty where no work on the house is asked for.
    """
    found = {danger for mend in mends for danger in dangers_of(site, catalogue, mend)}
    return tuple(words for danger, words in DANGERS.items() if danger in found)


def caution_of(finding: Finding) -> str:
    """What stands by a finding whatever its mend, also where the rule could not be run; empty for most."""
    return DANGERS["fire"] if finding.code.startswith(FIRE_CODES) else ""


def what_of(mend: Mend, names: Names) -> str:
    """What a mend is to fit, add or find out, such as ``lock``."""
    return _what(mend, dict(mend.values), names)


def _what(mend: Mend, values: dict[str, Value], names: Names) -> str:
    """What a mend's first words name; it is taken out of its values."""
    key = next((one for one in WHAT if one in values), "")
    if not key:
        return "lock" if mend.action == "change-lock" else "it"
    word = _word(values.pop(key), names)
    if key == "field":
        return FIELDS.get(word, field_words(word)[0])
    if key in ("lock", "glazing"):
        return f"{'lock' if key == 'lock' else 'pane'} ({word})"
    if key in ("sheet", "kind"):
        return f"{'an' if word[:1].lower() in 'aeiou' else 'a'} {word}"
    return "pane" if word == "glazing" else word


def _changes(values: dict[str, Value], names: Names, *, is_plain: bool) -> list[str]:
    """What changes, piece by piece; a place on a wall as one piece."""
    found: list[str] = []
    rest = dict(values)
    if rest.get("on") == "wall" and {"wall", "side", "offset_m"} <= rest.keys():
        wall, side, offset = (rest.pop(key) for key in ("wall", "side", "offset_m"))
        del rest["on"]
        found.append(names.wall_place(str(wall), side=str(side), offset_m=float(offset), is_plain=is_plain))
    if rest.get("on") == "ceiling" and {"x_m", "y_m"} <= rest.keys():
        across, up = (quantity(float(rest.pop(key)), "m", 0.1, is_plain=is_plain) for key in ("x_m", "y_m"))
        rest = {key: value for key, value in rest.items() if key not in ("on", "storey")}
        found.append(f"on the ceiling, at x {across}, y {up} on the plan")
    if rest.get("on") == "free" and {"storey", "x_m", "y_m"} <= rest.keys():
        across, up = (quantity(float(rest.pop(key)), "m", 0.1, is_plain=is_plain) for key in ("x_m", "y_m"))
        storey = names.of(str(rest.pop("storey")))
        del rest["on"]
        found.append(f"at x {across}, y {up} on the plan of {storey}")
    return found + [_change(key, value, names, is_plain=is_plain) for key, value in rest.items()]


def _change(key: str, value: Value, names: Names, *, is_plain: bool) -> str:
    words, unit = field_words(key)
    if isinstance(value, float | int) and not isinstance(value, bool) and unit:
        told = quantity(value, unit, 0.1 if unit in ("m", "m2") else 1.0, is_plain=is_plain)
        if unit == "m" and abs(value) < SMALL_M:
            told = quantity(value * 1000.0, "mm", 1.0, is_plain=is_plain)
        if key == "heading_deg":
            return f"looking {toward(value)} on the plan ({told})"
        return f"{told} above the floor" if key == "height_m" else f"{words} {told}"
    if key == "name":
        return f"\u201c{value}\u201d"
    return f"{words} {_word(value, names)}"


def field_words(key: str) -> tuple[str, str]:
    """How a field is called, and its unit by its ending.

    Examples
    --------
    >>> field_words("height_m"), field_words("lock")
    (('height above the floor', 'm'), ('lock', ''))
    """
    for suffix, unit in SUFFIXES.items():
        if key.endswith(suffix):
            return FIELDS.get(key, key.removesuffix(suffix).replace("_", " ")), unit
    return FIELDS.get(key, key.replace("_", " ")), ""


def _word(value: Value, names: Names) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return names.of(value) if isinstance(value, str) else f"{value:g}"
