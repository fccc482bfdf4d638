"""What rooms are for, guessed from what they are called."""

from __future__ import annotations

from types import MappingProxyType

from wardwright.model.fabric import SpaceUse

USES: MappingProxyType[str, SpaceUse] = MappingProxyType(
    {
        "hall": "hall", "hallway": "hall", "entrance": "hall", "porch": "hall", "corridor": "hall",
        "landing": "landing", "stairwell": "stairwell", "stairs": "stairwell",
        "living": "living", "lounge": "living", "sitting": "living", "dining": "dining", "kitchen": "kitchen",
        "bedroom": "bedroom", "nursery": "bedroom", "study": "study", "office": "study",
        "bathroom": "bathroom", "bath": "bathroom", "shower": "bathroom", "toilet": "toilet", "wc": "toilet",
        "utility": "utility", "laundry": "utility", "cupboard": "store", "store": "store", "pantry": "store",
        "larder": "store", "garage": "garage", "loft": "loft", "attic": "loft", "conservatory": "conservatory",
        "balcony": "balcony", "terrace": "terrace", "plant": "plant", "boiler": "plant",
    }
)  # fmt: skip
"""What a room is likely to be for, by a word of its id. (assumption)"""

USE_WORDS = (*dict.fromkeys(USES.values()), "other")
"""Every use that a room may have."""


def likely_use(identity: str) -> SpaceUse | None:
    """What a room of this id is likely to be for; its last word that says so counts.

    Examples
    --------
    >>> likely_use("bedroom-1"), likely_use("stairs-cupboard"), likely_use("den")
    ('bedroom', 'store', None)
    """
    return next((USES[word] for word in reversed(identity.split("-")) if word in USES), None)
