"""What a room is for, guessed from what a drawing calls it."""

from __future__ import annotations

import re

from wardwright.model.fabric import SpaceUse

_USES: tuple[tuple[str, SpaceUse], ...] = (
    (r"stair|treppe", "stairwell"),
    (r"landing|podest", "landing"),
    (r"bath|\bbad|shower|dusch|en.?suite", "bathroom"),
    (r"toilet|\btoil\b|\bwc\b|lavatory|cloak|\bg(ä|ae)ste.?wc", "toilet"),
    (r"kitchen|k(ü|ue)che|kochen", "kitchen"),
    (r"living|great.?room|lounge|sitting|wohn|family", "living"),
    (r"dining|ess(zimmer|en|platz)", "dining"),
    (r"bed.?room|schlaf|kinder|child|nursery|guest|gast|eltern", "bedroom"),
    (r"study|office|b(ü|ue)ro|arbeit", "study"),
    (r"garage|carport", "garage"),
    (r"utility|\butil\b|laundry|hauswirtschaft|\bhwr\b|waschk", "utility"),
    (r"plant|boiler|heizung|technik|mechanical", "plant"),
    (
        r"store|pantry|\bclo\b|w\.?i\.?c\b|storage|closet|cupboard|abstell|lager|keller|cellar|wardrobe",
        "store",
    ),
    (r"conservatory|wintergarten|sun.?room", "conservatory"),
    (r"loft|attic|galerie|gallery|dachboden|speicher", "loft"),
    (r"hall|foyer|flur|diele|entrance|entry|lobby|corridor|korridor|vestibule|vorraum|passage", "hall"),
)


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
