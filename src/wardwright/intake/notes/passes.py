"""Where somebody may be, and may not, while a part is set."""

from __future__ import annotations

from wardwright.intake.notes.clauses import Grammar, read_clauses
from wardwright.intake.notes.draft import Draft
from wardwright.intake.notes.names import find
from wardwright.intake.notes.words import Line
from wardwright.model.household import Pass

_PASS = Grammar(lists=frozenset({"may", "not"}))


def read_pass(draft: Draft, line: Line) -> None:
    """Read `pass mother night, may landing bathroom, not kitchen`."""
    line.take("pass")
    person = find(line, draft.people, line.name("a person"), what="person")
    part = find(line, draft.parts, line.name("a part, such as night"), what="part")
    clauses = read_clauses(line, _PASS)
    spaces = {
        key: tuple(find(line, draft.spaces, room, what="room").id for room in clauses.lists.get(word, ()))
        for word, key in (("may", "may"), ("not", "may_not"))
    }
    if not any(spaces.values()):
        raise line.refuse(
            "the pass names no room", "Write 'may' and the rooms where they may be, or 'not' and the others"
        )
    if any(one.part == part.id for one in person.passes):
        raise line.refuse(
            f"{person.name} has a pass for {part.name} already", "Put all its rooms into one line"
        )
    told = Pass(part=part.id, **{key: rooms for key, rooms in spaces.items() if rooms})
    fields = person.model_dump(exclude_unset=True) | {"passes": (*person.passes, told)}
    place = next(i for i, one in enumerate(draft.people) if one.id == person.id)
    draft.people[place] = type(person).model_validate(fields)
