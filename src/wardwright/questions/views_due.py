"""Which walks past detectors and before cameras are due, with people and with pets."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

import shapely

from wardwright.model.catalogue import Catalogue
from wardwright.model.room_shapes import floor_polygon
from wardwright.questions import pets_in, what_it_sees, what_it_shows
from wardwright.questions.answer import Answer
from wardwright.questions.between_states import Both, DueTest, apart, became, other_parts, value_of

SEEN = ("seen at", "surely noticed")
BEYOND = ("possibly noticed", "seen outside")
"""How the parts of what a detector sees begin that say where it is to notice, and where it may."""
SLIVER_M2 = 0.01
"""Less of a room than this is not seen. [m2] (assumption)"""


def views(both: Both, catalogue: Catalogue) -> Iterator[DueTest]:
    """The walks where each movement detector is to notice, and where it is to stay quiet."""
    known = {device.id for device in both.after.site.devices}
    for was, now in both.pairs(what_it_sees.NUMBER):
        if now.subject_id not in known:
            continue
        touched = became(both, now.subject_id)
        device = both.after.site.device(now.subject_id)
        if catalogue.sheet(device.sheet).kind != "movement-detector":
            continue
        if was is None or touched:
            for kind in ("view", "beyond view"):
                yield DueTest(kind=kind, about=now.subject_id, why=touched or "it can be worked out now")
            continue
        if _other_view(was, now, roles=("seen",), parts=SEEN):
            yield DueTest(kind="view", about=now.subject_id, why="it sees other floor than before")
        if _other_view(was, now, roles=("possibly-seen", "leak"), parts=BEYOND):
            yield DueTest(kind="beyond view", about=now.subject_id, why="it may see other floor than before")


def _other_view(was: Answer, now: Answer, *, roles: tuple[str, ...], parts: tuple[str, ...]) -> bool:
    old, new = ([one for one in each.sketches if one.role in roles] for each in (was, now))
    if was.sketches and now.sketches:
        return old != new
    # As it was kept when it was signed, without what is drawn: its numbers tell.
    return other_parts(was, now, beginning=parts, least=0.0)


def pets(both: Both, of_views: Iterable[DueTest]) -> Iterator[DueTest]:
    """The tests with each pet; `of_views` says which detectors see otherwise."""
    changed = {one.about for one in of_views}
    seeing = [
        one for one in both.after.answers if one.question == what_it_sees.NUMBER and one.subject_id in changed
    ]
    reach = any(
        was is not None and (was.verdict, value_of(was)) != (now.verdict, value_of(now))
        for was, now in both.pairs(pets_in.NUMBER)
    )
    for pet in both.after.site.pets:
        own = "it is new or another" if f"pets/{pet.id}" in both.changes else ""
        rooms = [floor_polygon(space) for space in both.after.site.spaces if space.id in pet.spaces]
        sees = any(not pet.spaces or _may_see(one, rooms) for one in seeing)
        if own or sees or reach:
            why = own or (
                "a detector sees other floor where it may be" if sees else "it gets nearer or farther"
            )
            yield DueTest(kind="pet", about=pet.id, why=why)


def _may_see(answer: Answer, rooms: Sequence[shapely.Polygon]) -> bool:
    """Whether a detector may notice anywhere in some rooms; it may where nothing is drawn of what it sees."""
    rings = [ring for one in answer.sketches if one.role == "possibly-seen" for ring in one.rings]
    # A hole counts as seen: that is an error toward a test more.
    floors = [shapely.Polygon(ring).buffer(0) for ring in rings if len(ring) > 2]
    return not floors or any(floor.intersection(room).area > SLIVER_M2 for floor in floors for room in rooms)


def pictures(both: Both) -> Iterator[DueTest]:
    """The walks to the named points of each camera."""
    known = {device.id for device in both.after.site.devices}
    for was, now in both.pairs(what_it_shows.NUMBER):
        if now.subject_id not in known:
            continue
        touched = became(both, now.subject_id)
        if (
            touched
            or was is None
            or apart(value_of(was), value_of(now), 0.0)
            or other_parts(was, now, beginning=("",), least=0.0)
        ):
            yield DueTest(kind="picture", about=now.subject_id, why=touched or "its picture is another")
