"""The facts about a house that are most worth adding first."""

from __future__ import annotations

from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.trials.alarm import DETECTORS
from wardwright.trials.ways_in import ways_in

AT_MOST = 5
"""How many are named. [-]"""


def worth_adding(site: Site, catalogue: Catalogue) -> tuple[str, ...]:
    """Up to five missing facts, the one that moves most answers first.

    Parameters
    ----------
    site : Site
        The house as far as it is known.
    catalogue : Catalogue
        Sheets, to know what each device is.

    Returns
    -------
    tuple of str
        Each a short sentence without a full stop.
    """
    wanted = (*_about_the_alarm(site, catalogue), *_about_the_people(site), *_about_the_house(site))
    missing = [text for is_missing, text in wanted if is_missing]
    return tuple(missing[:AT_MOST])


def _about_the_alarm(site: Site, catalogue: Catalogue) -> tuple[tuple[bool, str], ...]:
    kinds = {catalogue.sheet(device.sheet).kind for device in site.devices}
    ways, _ = ways_in(site, catalogue)
    openings = {way.opening.id: way.opening for way in ways}.values()
    unknown = sum(1 for opening in openings if opening.lock == "unknown")
    has_keypad = "keypad" in kinds or _has_keypad(site, catalogue)
    return (
        ("control-unit" not in kinds, "where the control unit is to be: every race ends there"),
        (
            not kinds & set(DETECTORS),
            "the first detectors: nothing would notice now",
        ),
        (not site.targets, "in which rooms an intruder would find something worth taking"),
        (not any(o.is_entry_door for o in site.openings), "which door the household really comes in by"),
        (
            unknown > 0,
            f"the locks of {unknown} openings that lead in"
            if unknown > 1
            else "the lock of the opening that leads in",
        ),
        (not has_keypad, "where the keypad is to be: entry and exit times hang on it"),
        ("sounder" not in kinds, "where the sounders are to be"),
    )


def _about_the_people(site: Site) -> tuple[tuple[bool, str], ...]:
    habits = sum(1 for opening in site.openings if opening.basis_of("habit") == "default")
    return (
        (not site.people, "who lives there, how fast they walk and where they sleep"),
        (habits > 0, f"how {habits} of the doors and windows usually stand when the house is empty"),
    )


def _about_the_house(site: Site) -> tuple[tuple[bool, str], ...]:
    walls = sum(1 for wall in site.walls if wall.construction == "unknown")
    return (
        (site.place.north_deg is None, "where north is on the plan"),
        (site.place.latitude_deg is None, "the latitude of the place"),
        (walls > 0, f"what {walls} of the walls are made of"),
        (not site.fixtures, "radiators, stoves and tall furniture"),
    )


def _has_keypad(site: Site, catalogue: Catalogue) -> bool:
    controls = [catalogue.sheet(device.sheet).control for device in site.devices]
    return any(control is not None and control.has_keypad for control in controls)
