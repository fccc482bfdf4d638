"""What the names of spaces say: whether one is a room, what people call it, what it is used for."""

from __future__ import annotations

import re

from wardwright.intake.ifc.file import Entity
from wardwright.model.fabric import SpaceUse

_USES: tuple[tuple[str, SpaceUse], ...] = (
    (r"stair|treppe", "stairwell"),
    (r"landing|podest", "landing"),
    (r"bath|\bbad|shower|dusch|en.?suite", "bathroom"),
    (r"toilet|\bwc\b|lavatory|cloak|\bg(ä|ae)ste.?wc", "toilet"),
    (r"kitchen|k(ü|ue)che|kochen", "kitchen"),
    (r"living|lounge|sitting|wohn|family", "living"),
    (r"dining|ess(zimmer|en|platz)", "dining"),
    (r"bed.?room|schlaf|kinder|child|nursery|guest|gast|eltern", "bedroom"),
    (r"study|office|b(ü|ue)ro|arbeit", "study"),
    (r"garage|carport", "garage"),
    (r"utility|laundry|hauswirtschaft|\bhwr\b|waschk", "utility"),
    (r"plant|boiler|heizung|technik|mechanical", "plant"),
    (r"store|storage|closet|cupboard|abstell|lager|keller|cellar|wardrobe", "store"),
    (r"conservatory|wintergarten|sun.?room", "conservatory"),
    (r"loft|attic|galerie|gallery|dachboden|speicher", "loft"),
    (r"hall|foyer|flur|diele|entrance|entry|lobby|corridor|korridor|vestibule|vorraum|passage", "hall"),
)
_NOT_A_ROOM = re.compile(r"^(roof|dach|void|luftraum|shaft|schacht|bgf|ngf|gross.*|area)$", re.IGNORECASE)
_OUTSIDE = re.compile(r"terra[sc]|balk?on|patio|loggia|garden|garten|outside|external|porch", re.IGNORECASE)


def no_room(entity: Entity) -> str | None:
    """Why a space is no room of the house; None where it is one."""
    words = (entity.Name or "", entity.LongName or "", re.sub(r"^\d+\s*-\s*", "", entity.Name or ""))
    if any(_NOT_A_ROOM.match(word.strip()) for word in words):
        return "not a room"
    kind = getattr(entity, "PredefinedType", None) or getattr(entity, "InteriorOrExteriorSpace", None)
    if kind == "EXTERNAL" or any(_OUTSIDE.search(word) for word in words):
        return "outside the house"
    return None


def name_of(entity: Entity) -> str:
    """The readable name; the code is added where the readable one is not the name itself."""
    code, words = (entity.Name or "").strip(), (entity.LongName or "").strip()
    if not words:
        return code or f"space {entity.id()}"
    plain = re.sub(r"^\d+\s*-\s*", "", words)
    has_letters = re.search(r"[A-Za-z]", code) and code not in words and words not in code
    return f"{plain} ({code})" if has_letters else plain


def use_of(name: str) -> SpaceUse:
    """What a room is used for, by its name in English or German.

    Examples
    --------
    >>> use_of("Küche"), use_of("Bedroom 2"), use_of("Room")
    ('kitchen', 'bedroom', 'other')
    """
    for pattern, use in _USES:
        if re.search(pattern, name, re.IGNORECASE):
            return use
    return "other"
