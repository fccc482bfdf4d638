"""Names for ids, and a mend as a sentence."""

from __future__ import annotations

from collections.abc import Mapping

from wardwright.documents.content.quantities import quantity, range_words, sentence, value_words
from wardwright.documents.content.wording import ACTIONS, FIELDS
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.rules.finding import Mend

Value = str | float | int | bool
SUFFIXES = {"_m2": "m2", "_m": "m", "_s": "s", "_deg": "deg", "_dba": "dB", "_kg": "kg"}
LOCKS_AND_LIGHTS = ("change-lock", "add-light")
"""The mends that stand first: they hold somebody up, or keep them away."""


def names_of(site: Site, catalogue: Catalogue | None = None) -> dict[str, str]:
    """What people call each thing of a site, by its id.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue, optional
        For the names of device sheets.

    Returns
    -------
    dict of str
        Names by id.
    """
    names = {row.id: row.name for row in catalogue.sheets} if catalogue is not None else {}
    names |= {wall.id: f"wall {wall.id}" for wall in site.walls}
    for group in (
        site.storeys, site.stairs, site.fixtures, site.outlets, site.behaviours, site.parts, site.people,
        site.pets, site.targets, site.spaces, site.openings, site.devices,
    ):  # fmt: skip
        names |= {thing.id: thing.name for thing in group}
    names |= {zone.id: f"zone {zone.number}, {zone.name}" for zone in site.zones}
    return names | {"programme": "the programme"}


def mend_sentence(mend: Mend, names: Mapping[str, str], *, is_plain: bool = False) -> str:
    """One mend in words, with what it brings.

    Parameters
    ----------
    mend : Mend
        The cure as data.
    names : mapping of str
        Names by id; an id that is not there stands for itself.
    is_plain : bool, default False
        Plain letters only, for a terminal.

    Returns
    -------
    str
        A sentence, or two.

    Examples
    --------
    >>> mend_sentence(Mend(action="move-device", subject="md", values=(("height_m", 2.2),)), {"md": "Hall detector"})
    'Move Hall detector: height above the floor 2.2 m.'
    """
    values = dict(mend.values)
    start = ACTIONS[mend.action]
    what = ""
    if "{what}" in start:
        key = next(
            (k for k in ("sheet", "kind", "behaviour", "what", "field", "lock", "glazing") if k in values), ""
        )
        what = _word(values.pop(key), names) if key else ("lock" if mend.action == "change-lock" else "it")
        if key in ("lock", "glazing"):
            what = f"{'lock' if key == 'lock' else 'pane'} ({what})"
        elif key == "field":
            what = FIELDS.get(what, _field_words(what)[0])
        elif key in ("sheet", "kind"):
            what = f"{'an' if what[:1].lower() in 'aeiou' else 'a'} {what}"
    text = start.format(name=names.get(mend.subject, mend.subject), what=what.replace("glazing", "pane"))
    changes = ", ".join(_change(key, value, names, is_plain=is_plain) for key, value in values.items())
    text = sentence(f"{text}: {changes}" if changes else text)
    if mend.gain is not None:
        value, span = value_words(mend.gain, is_plain=is_plain), range_words(mend.gain, is_plain=is_plain)
        brings = "It would hold longer by" if mend.action == "change-lock" else "In hand then:"
        text += f" {brings} {value} ({span})."
    return text


def _change(key: str, value: Value, names: Mapping[str, str], *, is_plain: bool) -> str:
    words, unit = _field_words(key)
    if isinstance(value, float | int) and not isinstance(value, bool) and unit:
        step = 0.1 if unit in ("m", "m2") else 1.0
        if unit == "m" and abs(value) < 0.1:  # a contact's gap
            return f"{words} {quantity(value * 1000.0, 'mm', 1.0, is_plain=is_plain)}"
        return f"{words} {quantity(value, unit, step, is_plain=is_plain)}"
    if key == "name":
        return f'"{value}"' if is_plain else f"\u201c{value}\u201d"
    return f"{words} {_word(value, names)}"


def _field_words(key: str) -> tuple[str, str]:
    """How a field is called, and its unit by its ending."""
    for suffix, unit in SUFFIXES.items():
        if key.endswith(suffix):
            return FIELDS.get(key, key.removesuffix(suffix).replace("_", " ")), unit
    return FIELDS.get(key, key.replace("_", " ")), ""


def _word(value: Value, names: Mapping[str, str]) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return names.get(value, value) if isinstance(value, str) else f"{value:g}"
