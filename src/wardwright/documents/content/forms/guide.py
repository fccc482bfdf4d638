"""The open one-page guide, made for this house: how to go out, come in, sleep, and what to do when it sounds."""

from __future__ import annotations

from datetime import date

from wardwright.documents.content.discretion import discreet
from wardwright.documents.content.forms.living import entry_doors, keypad_rooms, rooms_with, watched_rooms
from wardwright.documents.content.paper import Paper, Section
from wardwright.documents.content.quantities import joined
from wardwright.documents.content.schedule import kinds_fitted
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import DeviceKind
from wardwright.model.site import Site

FIRE: tuple[DeviceKind, ...] = ("smoke-alarm", "heat-alarm")
PETS = "Pets stay where we agreed."
"""Whether there are any is not told: the guide may lie about."""
RING = ("Ring us, by day", "Ring us, by night")
WITHIN = "The keypad is in one of these: unset from within as we showed you."
SOUNDS = (
    "Unset it. The display says what it was and where.",
    "Something broken or open? Do not go in: ring the police from outside.",
    "A mistake? Unset, tell whoever was called, and write it in the logbook.",
)
CARE = (
    "Set it every time. Try one detector each month, another each time.",
    "Lamps, curtains and furniture stay out of a detector\u2019s sight. Wipe it with a dry cloth.",
    "\u201cBattery\u201d or \u201cfault\u201d on the display: ring us. Open nothing.",
    "Your code is yours: never written down, and changed when somebody leaves.",
)


def guide(site: Site, catalogue: Catalogue, *, drawn_up: date) -> Paper:
    """Write the guide of a house.

    Parameters
    ----------
    site : Site
        Its doors, keypads, parts and programme.
    catalogue : Catalogue
        Says what each device is.
    drawn_up : date
        The day the paper is made.

    Returns
    -------
    Paper
        One page in large letters, without names of people, times, or where the control unit is.
    """
    return Paper(
        title="Your alarm, on one page",
        house=discreet(site.name, site, catalogue),
        copy="open",
        drawn_up=drawn_up,
        is_large=True,
        sections=(
            Section("Going out", points=_going_out(site, catalogue)),
            Section("Coming in", points=_coming_in(site, catalogue)),
            *_nights(site, catalogue),
            Section("When it sounds", points=(*SOUNDS, *_others(site, catalogue))),
            Section("Every day", points=CARE),
            Section("We are here", blanks=RING),
        ),
    )


def _where(site: Site, catalogue: Catalogue) -> str:
    rooms = keypad_rooms(site, catalogue)
    return f"at the keypad ({_either(rooms)})" if rooms else "as we showed you"


def _either(names: tuple[str, ...]) -> str:
    return " or ".join(names)


def _full(site: Site) -> str:
    return site.parts[0].name if site.parts else "set"


def _going_out(site: Site, catalogue: Catalogue) -> tuple[str, ...]:
    doors = entry_doors(site, catalogue)
    is_refused = site.programme.if_open_when_setting == "refuse"
    open_words = (
        "Shut and lock all doors and windows. With one open it does not set, and the display says which."
        if is_refused
        else "Shut and lock all doors and windows. What stays open is left out until you unset again."
    )
    leave = f"leave by {_either(doors)}" if doors else "leave by the door that we showed you"
    return (
        open_words,
        PETS,
        f"Choose \u201c{_full(site)}\u201d {_where(site, catalogue)}, {leave}, and do not turn back.",
    )


def _coming_in(site: Site, catalogue: Catalogue) -> tuple[str, ...]:
    doors = entry_doors(site, catalogue)
    by = f"Come in by {_either(doors)} only" if doors else "Come in by the door that we showed you only"
    return (
        f"{by}, go straight on and unset {_where(site, catalogue)}. The tone stops.",
        "Arms full? Put things down first. Any other way in is an alarm at once.",
    )


def _nights(site: Site, catalogue: Catalogue) -> tuple[Section, ...]:
    found = []
    for part in site.parts[1:]:
        rooms = watched_rooms(site, catalogue, part.id)
        keep_out = [f"Until you unset, nobody goes into: {joined(rooms)}."] if rooms else []
        if set(rooms) & set(keypad_rooms(site, catalogue)):
            keep_out.append(WITHIN)
        choose = f"Choose \u201c{part.name}\u201d {_where(site, catalogue)}."
        points = (choose, *keep_out, "Unset before a door or window is opened, also at night.")
        if any(part.id in zone.parts for zone in site.zones):
            found.append(Section(f"At home: {part.name}", points=points))
    return tuple(found)


def _others(site: Site, catalogue: Catalogue) -> tuple[str, ...]:
    kinds = kinds_fitted(site, catalogue)
    told = []
    if any(kind in kinds for kind in FIRE):
        told.append(
            "Smoke or fire: everybody out, shut doors behind you, ring the fire brigade from outside."
        )
    if "co-alarm" in kinds:
        told.append("CO alarm: windows open, everything that burns off, out, and ring for help.")
    if "water-detector" in kinds:
        told.append(f"Water ({joined(rooms_with(site, catalogue, 'water-detector'))}): shut the stopcock.")
    return tuple(told)
