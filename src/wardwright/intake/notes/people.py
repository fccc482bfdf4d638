"""Who lives there, what moves about, and what an intruder would come for."""

from __future__ import annotations

from types import MappingProxyType
from typing import Literal

from wardwright.intake.notes.clauses import Clauses, Grammar, read_clauses
from wardwright.intake.notes.draft import Draft
from wardwright.intake.notes.marks import marks
from wardwright.intake.notes.names import find, new_id, words_of
from wardwright.intake.notes.places import floor_place
from wardwright.intake.notes.words import Line
from wardwright.model.household import Person, Pet, Target

BIG_DOG_KG = 12.0
"""From this weight a dog is taken for a big one. [kg] (assumption)"""
USUAL_PETS: MappingProxyType[str, tuple[float, float]] = MappingProxyType(
    {
        "cat": (0.3, 4.5), "dog": (0.5, 18.0), "small-dog": (0.35, 7.0), "big-dog": (0.6, 30.0),
        "rabbit": (0.25, 2.5), "bird": (0.25, 0.5), "pet": (0.3, 5.0),
    }
)  # fmt: skip
"""Height and weight where nothing is said. [m], [kg] (assumption)"""

_PERSON = Grammar(
    words=MappingProxyType({"bed": None}),
    flags=frozenset(
        {"slow", "usual", "quick", "hears-badly", "child", "sleeps-heavily", "visits", "no-code"}
    ),
)
_PET = Grammar(
    after=frozenset({"", "high"}), lists=frozenset({"stays"}), takes_weight=True, sizes=frozenset()
)
_TARGET = Grammar(
    flags=frozenset({"low", "medium", "high"}), takes_side=True, takes_ends=True, takes_names=True
)


def _record_basis(clauses: Clauses, told: list[str], guessed: list[str]) -> dict[str, object]:
    basis = marks(clauses, told, guessed=guessed)
    return {"basis": basis} if basis else {}


def read_person(draft: Draft, line: Line) -> None:
    """Read `person grandmother slow bed bedroom-1 hears-badly`."""
    line.take("person")
    written = line.name("a role, such as grandmother")
    clauses = read_clauses(line, _PERSON)
    clauses.words.setdefault("as", written)
    identity = new_id(line, clauses, written, taken=draft.everything())
    fields: dict[str, object] = {"id": identity, "name": clauses.words.get("named", words_of(identity))}
    paces = clauses.flags & {"slow", "usual", "quick"}
    if len(paces) > 1:
        raise line.refuse("two paces are given", "Keep one of slow, usual, quick")
    if paces:
        fields["pace"] = paces.pop()
    if "bed" in clauses.words:
        fields["bed"] = find(line, draft.spaces, clauses.words["bed"], what="room").id
    for flag, field in (
        ("hears-badly", "hears_badly"),
        ("child", "is_child"),
        ("sleeps-heavily", "sleeps_heavily"),
    ):
        if flag in clauses.flags:
            fields[field] = True
    if "visits" in clauses.flags:
        fields["comes"] = "visits"
    if "no-code" in clauses.flags:
        fields["knows_code"] = False
    told = [key for key in fields if key not in ("id", "name")]
    draft.people.append(Person.model_validate(fields | _record_basis(clauses, told, [])))


def read_pet(draft: Draft, line: Line) -> None:
    """Read `dog 0.6 m 30 kg, stays hall kitchen`, or `pet tortoise 0.2 m 3 kg`."""
    kind = line.take("a kind of pet").written
    written = line.name("its name") if kind == "pet" else kind
    clauses = read_clauses(line, _PET)
    clauses.words.setdefault("as", new_id(line, clauses, written, taken=draft.everything()))
    identity = new_id(line, clauses, written, taken=draft.everything())
    usual = USUAL_PETS[kind]
    height = clauses.measures.get("", clauses.measures.get("high"))
    mass = clauses.measures.get("weight")
    guessed = [*(["height_m"] if height is None else []), *(["mass_kg"] if mass is None else [])]
    if kind == "dog":
        guessed.append("kind")
    fields: dict[str, object] = {
        "id": identity,
        "name": clauses.words.get("named", words_of(identity)),
        "kind": _kind(kind, usual[1] if mass is None else mass),
        "height_m": usual[0] if height is None else height,
        "mass_kg": usual[1] if mass is None else mass,
    }
    if "stays" in clauses.lists:
        fields["spaces"] = tuple(
            find(line, draft.spaces, room, what="room").id for room in clauses.lists["stays"]
        )
    told = [key for key in fields if key not in ("id", "name", *guessed)]
    draft.pets.append(Pet.model_validate(fields | _record_basis(clauses, told, guessed)))


def _kind(word: str, mass_kg: float) -> Literal["cat", "small-dog", "big-dog", "rabbit", "bird", "other"]:
    match word:
        case "dog":
            return "big-dog" if mass_kg >= BIG_DOG_KG else "small-dog"
        case "cat" | "small-dog" | "big-dog" | "rabbit" | "bird":
            return word
        case _:
            return "other"


def read_target(draft: Draft, line: Line) -> None:
    """Read `target bedroom-1 small valuables, high, corner north-west`."""
    line.take("target")
    room = find(line, draft.spaces, line.name("a room"), what="room")
    clauses = read_clauses(line, _TARGET)
    identity = new_id(line, clauses, f"{room.id}-target", taken=draft.everything())
    fields: dict[str, object] = {
        "id": identity,
        "name": clauses.words.get("named", " ".join(clauses.names) or "valuables"),
        "space": room.id,
    }
    worths = clauses.flags & {"low", "medium", "high"}
    if len(worths) > 1:
        raise line.refuse("two worths are given", "Keep one of low, medium, high")
    if worths:
        fields["worth"] = worths.pop()
    if clauses.side is not None or clauses.ends:
        fields["at_m"], _ = floor_place(line, room, clauses, off=0.3)
    told = [key for key in fields if key not in ("id", "name")]
    draft.targets.append(Target.model_validate(fields | _record_basis(clauses, told, [])))
