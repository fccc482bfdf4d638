"""Question 2: where should the control unit go? A trade-off line of places, not one winner."""

from __future__ import annotations

import math
from contextlib import suppress

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, WallMount
from wardwright.model.estimate import Estimate
from wardwright.model.revision import with_device
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.questions.answer import Answer, PartAnswer, Verdict, about_the_site, unanswered
from wardwright.questions.places_for_the_unit import Places, places_for
from wardwright.questions.unit_place import Place
from wardwright.questions.will_it_reach import verdict_of
from wardwright.rules.finding import Mend
from wardwright.rules.outside_view import usual_height
from wardwright.rules.radio_belief import read_devices
from wardwright.rules.radio_hops import heard_by
from wardwright.rules.radio_links import MARGIN_LIMIT, links_with
from wardwright.rules.registry import exactly
from wardwright.rules.unit_spots import USUAL_HEIGHT_M
from wardwright.trials.watchers import control_units

NUMBER = 2
MEASURE = "margin of its worst radio link where it is"
LETTERS = "ABCDEFGH"
HAIR_DB = 1e-6
"""What rounding may cost at most. [dB]"""


def answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """One answer for each control unit."""
    units = control_units(site, catalogue)
    if not units:
        return (about_the_site(NUMBER, MEASURE, site=site, reason="no control unit"),)
    return tuple(_answer(site, catalogue, unit) for unit in units)


def _answer(site: Site, catalogue: Catalogue, unit: Device) -> Answer:
    try:
        places = places_for(site, catalogue, unit)
    except NotComputable as reason:
        why = f"not computable: {reason}"
        return unanswered(NUMBER, MEASURE, subject=unit.name, subject_id=unit.id, reason=why)
    limit = catalogue.limit(MARGIN_LIMIT, site.place.rule_pack).value
    margin = _worst_margin(site, catalogue, places.present)
    return Answer(
        question=NUMBER,
        subject=unit.name,
        subject_id=unit.id,
        measure=MEASURE,
        estimate=margin,
        verdict=_verdict(places, verdict_of(margin, limit)),
        parts=_parts(places),
        notes=_notes(places),
        mends=tuple(mend for place in places.line for mend in _mend(site, catalogue, unit, place=place)),
        sketches=_sketches(places),
    )


def _worst_margin(site: Site, catalogue: Catalogue, place: Place) -> Estimate:
    """The margin of the worst link with the unit in a place, cameras apart, as question 6 has it."""
    found: list[Estimate] = []
    heard, readings = heard_by(site, catalogue), read_devices(site)
    asked: set[str] = set()
    for straight_db, ident in place.margins:
        # A link has a straight way or a better one: those that are left are no worse than theirs.
        if found and straight_db > min(one.value for one in found) + HAIR_DB:
            break
        if ident in asked:
            continue
        asked.add(ident)
        with suppress(NotComputable):
            links = links_with(site.bare, catalogue, site.device(ident), heard=heard, readings=readings)
            found.append(links[0].margin)
    return min(found, key=lambda one: (one.value, one.low))


def _verdict(places: Places, of_radio: Verdict) -> Verdict:
    """Bad where its radio is, or where it is seen or on the way in and a place beats it; thin where one beats it."""
    now = places.present
    is_beaten = any(one.beats(now) for one in places.line)
    if of_radio == "bad" or (is_beaten and (now.seen > 0 or now.is_on_route)):
        return "bad"
    return "thin" if is_beaten or of_radio == "thin" else "good"


def _named(places: Places) -> list[tuple[str, Place]]:
    lettered = [(f"place {LETTERS[i]}, {place.space}", place) for i, place in enumerate(places.line)]
    return [("where it is", places.present), *lettered]


def _parts(places: Places) -> tuple[PartAnswer, ...]:
    found = []
    for name, place in _named(places):
        found.append(
            PartAnswer(name=f"{name}: worst radio margin", estimate=exactly(place.margin_db, "dB", "default"))
        )
        found.append(
            PartAnswer(
                name=f"{name}: reached soonest after", estimate=exactly(place.reached_s, "s", "default")
            )
        )
        has_power = math.isfinite(place.power_m)
        power = exactly(place.power_m, "m", "told") if has_power else None
        found.append(
            PartAnswer(
                name=f"{name}: to a power point",
                estimate=power,
                reason=None if has_power else "no power point is drawn in its room",
            )
        )
    return tuple(found)


def _notes(places: Places) -> tuple[str, ...]:
    notes = []
    for name, place in _named(places):
        facts = [f"worst heard is {place.worst}"]
        if place.seen:
            facts.append(f"seen from outside through {place.seen} pane{'s' if place.seen > 1 else ''}")
        if place.is_on_route:
            facts.append("on the way in of the household")
        notes.append(f"{name}: " + ", ".join(facts))
    if not places.line:
        notes.append(
            "no place in a dry room of ours is better in anything without being worse in everything else"
        )
    notes.append("damp, heat, what hides behind the plaster and the household's wish are not weighed")
    return tuple(notes)


def _mend(site: Site, catalogue: Catalogue, unit: Device, *, place: Place) -> tuple[Mend, ...]:
    """Moving it there, with the margin that the worst link would have."""
    spot = place.spot
    if spot is None:
        return ()
    height = usual_height(unit, USUAL_HEIGHT_M)
    mount = WallMount(wall=spot.wall, side=spot.side, offset_m=spot.offset_m, height_m=height)
    there = with_device(site, unit.model_copy(update={"mount": mount, "heading_deg": None}))
    gain = _worst_margin(there, catalogue, place)
    return (Mend(action="move-device", subject=unit.id, values=spot.values(height), gain=gain),)


def _sketches(places: Places) -> tuple[Sketch, ...]:
    now = places.present
    found = [Sketch(role="goal", storey=now.at.storey, points=((now.at.x_m, now.at.y_m),), label="now")]
    found += [
        Sketch(
            role="suggestion",
            storey=place.at.storey,
            points=((place.at.x_m, place.at.y_m),),
            label=f"{LETTERS[i]}: {place.margin_db:.0f} dB, {place.reached_s:.1f} s",
        )
        for i, place in enumerate(places.line)
    ]
    return tuple(found)
