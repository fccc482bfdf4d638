"""What the names of spaces say: whether one is a room, what people call it, what it is used for."""

from __future__ import annotations

import re

from wardwright.intake.ifc.file import Entity

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
