"""Names of zones: what they say, how they look on a display, and names made of floor, room and thing."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache
from typing import get_args

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount
from wardwright.model.fabric import Space, SpaceUse, Storey
from wardwright.model.placement import sides_of_opening, space_at, standing
from wardwright.model.programme import Zone
from wardwright.model.site import Site
from wardwright.rules.kit import devices_of

GENERIC_WORDS = frozenset({
    "alarm", "area", "channel", "circuit", "contact", "detector", "device", "door", "gap", "input", "keypad", "loop",
    "motion", "movement", "new", "no", "number", "part", "pir", "point", "room", "sensor", "sounder", "switch",
    "test", "unit", "window", "zone",
})  # fmt: skip
"""Words that say nothing of where. (common practice)"""
PLACE_WORDS = frozenset({
    "attic", "back", "basement", "bath", "cellar", "corridor", "cloakroom", "den", "downstairs", "drive", "entrance",
    "entry", "foyer", "front", "gallery", "garden", "gate", "hallway", "lobby", "lounge", "mezzanine", "nursery",
    "office", "outside", "passage", "patio", "playroom",
    "pantry", "porch", "rear", "road", "roof", "shed", "shop", "shower", "side", "sitting", "stair", "stairs",
    "street", "upstairs", "wc", "workshop", "yard",
}) | {word for use in get_args(SpaceUse) if use not in ("other", "plant") for word in use.split("-")}  # fmt: skip
"""Words that say where, besides the names of the site's own spaces and openings. (common practice)"""

FLOORS_ABOVE = ("Ground", "First", "Second", "Third", "Fourth", "Fifth")
FLOORS_SHORT = ("Gnd", "1st", "2nd", "3rd", "4th", "5th")
MOST_OF_A_KIND = 99
"""Names that would otherwise be the same are numbered up to this. [-] (assumption)"""
LEAST_OF_A_WORD = 4
"""A word cut off by the display still counts when this many letters of it are left. [-] (assumption)"""
LOWEST_FLOOR_M = -1.0
"""A storey whose floor is lower than this is a cellar. [m] (assumption)"""


@lru_cache(maxsize=4096)
def words_of(text: str) -> tuple[str, ...]:
    """The words of a name in small letters, without possessive endings and bare numbers.

    Examples
    --------
    >>> words_of("Anna's room 2")
    ('anna', 'room')
    """
    plain = re.sub(r"['\N{RIGHT SINGLE QUOTATION MARK}]s\b", "", text.casefold())
    return tuple(word for word in re.findall(r"[^\W_]+", plain) if not word.isdigit())


def shown_name(name: str, length: int | None) -> str:
    """A name as a display of that many letters shows it, spare spaces apart; None: nothing is cut off."""
    plain = " ".join(name.split())
    return plain if length is None else plain[:length].rstrip()


def as_shown(name: str, length: int | None) -> str:
    """A name as a display of that many letters shows it, capitals and spare spaces apart."""
    return shown_name(name, length).casefold()


def display_length(site: Site, catalogue: Catalogue) -> int | None:
    """Letters of the shortest display of a site's control units; None where none is known."""
    sheets = [sheet.control for _, sheet in devices_of(site, catalogue, "control-unit")]
    return min((sheet.display_length for sheet in sheets if sheet is not None), default=None)


def place_words(site: Site) -> frozenset[str]:
    """All words that say where in this house."""
    names = [*(space.name for space in site.spaces), *(opening.name for opening in site.openings)]
    own = (words_of(name) for name in names)
    found = {word for words in own for word in words if len(word) > 1}
    return PLACE_WORDS | (found - GENERIC_WORDS)


def faults_of_words(site: Site, name: str, *, length: int | None) -> tuple[str, ...]:
    """What is wrong with a name by itself, each as words that go after `its name`.

    Parameters
    ----------
    site : Site
        Says what its rooms and people are called.
    name : str
        The name.
    length : int or None
        How many letters the display has; None: not known, so nothing is cut off.

    Returns
    -------
    tuple of str
        Empty for a clear name.
    """
    words = words_of(as_shown(name, length))
    if all(word.rstrip("0123456789") in GENERIC_WORDS for word in words):
        return ("says nothing but a kind or a number",)
    faults = [
        f"names a person, {person}"
        for person in sorted({person.name for person in site.people})
        if _holds(words_of(name), words_of(person))
    ]
    known = place_words(site)
    if not any(word in known or word.rstrip("0123456789") in known for word in words):
        beginnings = tuple(word for word in words if len(word) >= LEAST_OF_A_WORD)
        if not any(place.startswith(beginnings) for place in known):
            faults.append("does not say where")
    return tuple(faults)


def _holds(words: tuple[str, ...], wanted: tuple[str, ...]) -> bool:
    size = len(wanted)
    return size > 0 and any(words[i : i + size] == wanted for i in range(len(words) - size + 1))


def floor_names(site: Site, storey_id: str) -> tuple[str, str]:
    """The trade's name of a storey, whole and short: cellars below, then ground, first and so on."""
    rising = sorted(site.storeys, key=lambda storey: (storey.elevation_m, storey.id))
    cellars = [storey for storey in rising if storey.elevation_m < LOWEST_FLOOR_M]
    above: list[Storey] = [storey for storey in rising if storey not in cellars]
    storey = site.storey(storey_id)
    if storey in cellars:
        return "Cellar", "Clr"
    number = above.index(storey)
    if number < len(FLOORS_ABOVE):
        return FLOORS_ABOVE[number], FLOORS_SHORT[number]
    return f"Floor {number}", f"F{number}"


def proposed_names(site: Site, catalogue: Catalogue, *, zone: Zone, length: int) -> Iterator[str]:
    """Names for a zone made of floor, room and thing, the fullest first, each within a display's length.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        Says what each device is.
    zone : Zone
        The zone to be named.
    length : int
        How many letters the display has.

    Yields
    ------
    str
        Names that fit, the later ones numbered; none where a device's room is not known.
    """
    known = {device.id: device for device in site.devices}
    devices = [known[name] for name in sorted(zone.devices) if name in known]
    room = _room(site, devices[0]) if devices else None
    if room is None:
        return
    whole, short = floor_names(site, room.storey)
    floors = (whole, short) if len(site.storeys) > 1 else ("",)
    things = _things(site, catalogue, devices[0])
    names = _room_names(site, room)
    for tail in ("", *(f" {number}" for number in range(2, MOST_OF_A_KIND + 1))):
        parts = ((floor, name, thing) for name in names for thing in things for floor in floors)
        forms = (" ".join(part for part in three if part) for three in parts)
        fitting = next((form for form in forms if len(form) + len(tail) <= length), None)
        if fitting is not None:
            yield fitting + tail
            continue
        # Too long a room's name is cut, with the short words for the rest.
        ends = [part for part in (floors[-1], things[-1]) if part]
        spare = length - len(tail) - sum(len(part) + 1 for part in ends)
        cut = names[-1][: max(spare, 0)].rstrip()
        if LEAST_OF_A_WORD <= len(cut) < len(names[-1]):
            yield " ".join((*ends[:-1], cut, ends[-1])) + tail


def _room(site: Site, device: Device) -> Space | None:
    if isinstance(device.mount, OpeningMount):
        sides = sides_of_opening(site, site.opening(device.mount.opening))
        rooms = [site.space(side) for side in sides if side is not None]
        ours = [room for room in rooms if room.belongs == "ours"] or rooms
        return min(ours, key=lambda room: room.id) if ours else None
    place = standing(site, device)
    return space_at(site, place.storey, (place.x_m, place.y_m))


def _room_names(site: Site, room: Space) -> tuple[str, ...]:
    """What a room is called, in full, and without the word `room`; by its use where its name names a person."""
    people = [words_of(person.name) for person in site.people]
    names_someone = any(_holds(words_of(room.name), person) for person in people)
    is_clear = not names_someone and words_of(room.name)
    whole = (room.name if is_clear else room.use.replace("-", " ")).split()
    short = [word for word in whole if word.casefold() != "room"]
    return (" ".join(whole), " ".join(short or whole))


def _things(site: Site, catalogue: Catalogue, device: Device) -> tuple[str, ...]:
    if isinstance(device.mount, OpeningMount):
        kind = site.opening(device.mount.opening).kind
        return {"door": ("door", "dr"), "window": ("window", "win")}.get(
            kind, (kind.replace("-", " "), kind[:3])
        )
    kind_of_device = catalogue.sheet(device.sheet).kind
    if kind_of_device == "movement-detector":
        return ("movement", "mov")
    return (kind_of_device.replace("-", " "), kind_of_device[:3])
