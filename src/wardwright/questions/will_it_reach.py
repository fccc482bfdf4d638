"""Question 6: will the radio work here, with doors shut?"""

from __future__ import annotations

from functools import lru_cache

from wardwright.errors import NotComputable
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.estimate import Estimate
from wardwright.model.fixture import Outlet
from wardwright.model.site import Site
from wardwright.questions.answer import Answer, PartAnswer, Verdict, about_the_site, unanswered
from wardwright.rules.finding import Mend
from wardwright.rules.radio_belief import SOME, UNKNOWN_CLASSES, ReadDevice, read_devices
from wardwright.rules.radio_hops import Heard, heard_by, linked_devices
from wardwright.rules.radio_links import MARGIN_LIMIT, Link, links_with
from wardwright.rules.radio_sketches import costly_on, radio_sketches
from wardwright.rules.radio_spots import other_place_mend, repeater_mend
from wardwright.rules.radio_teaching import next_reading
from wardwright.rules.registry import exactly
from wardwright.rules.thing_words import thing_words

NUMBER = 6
MEASURE = "margin above what the receiver needs, doors shut"


def answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """One answer for each radio device that has to be heard."""
    return _answers(site, catalogue, is_mended=True)


def without_mends(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """The same while something is dragged: what would mend them is not tried."""
    return _answers(site, catalogue, is_mended=False)


def _answers(site: Site, catalogue: Catalogue, *, is_mended: bool) -> tuple[Answer, ...]:
    found = linked_devices(site, catalogue)
    if not found:
        return (about_the_site(NUMBER, MEASURE, site=site, reason="no radio device"),)
    heard, readings = heard_by(site, catalogue), read_devices(site)
    teaches = next_reading(site, catalogue)
    every = [
        _mended(site.bare, catalogue, device, outlets=site.outlets, heard=heard, readings=readings)
        if is_mended
        else _answer(site.bare, catalogue, device, heard=heard, readings=readings)
        for device, _ in found
    ]
    return tuple(
        one
        if teaches is None or one.subject_id != teaches.device.id
        else one.model_copy(update={"notes": (*one.notes, teaches.words)})
        for one in every
    )


@lru_cache(maxsize=1024)
def _mended(
    house: Site,
    catalogue: Catalogue,
    device: Device,
    *,
    outlets: tuple[Outlet, ...],
    heard: Heard,
    readings: tuple[ReadDevice, ...],
) -> Answer:
    """What would mend it put to the answer, which stays as it is where that is not asked or not known."""
    answer = _answer(house, catalogue, device, heard=heard, readings=readings)
    if answer.verdict not in ("bad", "thin"):
        return answer
    worst, *_ = links_with(house, catalogue, device, heard=heard, readings=readings)
    mends = _mends(house, catalogue, device, link=worst, outlets=outlets, heard=heard, readings=readings)
    return answer.model_copy(update={"mends": mends})


@lru_cache(maxsize=1024)
def _answer(
    house: Site,
    catalogue: Catalogue,
    device: Device,
    *,
    heard: Heard,
    readings: tuple[ReadDevice, ...],
) -> Answer:
    try:
        links = links_with(house, catalogue, device, heard=heard, readings=readings)
    except NotComputable as reason:
        why = f"not computable: {reason}"
        return unanswered(NUMBER, MEASURE, subject=device.name, subject_id=device.id, reason=why)
    limit = catalogue.limit(MARGIN_LIMIT, house.place.rule_pack).value
    worst = links[0]
    verdict = verdict_of(worst.margin, limit)
    return Answer(
        question=NUMBER,
        subject=device.name,
        subject_id=device.id,
        measure=MEASURE,
        estimate=worst.margin,
        verdict=verdict,
        chance=1.0 - worst.chance_under(limit),
        parts=_parts(links, limit=limit),
        notes=_notes(house, catalogue, links),
        sketches=radio_sketches(house, worst),
    )


def verdict_of(margin: Estimate, limit: float) -> Verdict:
    """Over the whole range, at the likely value, or not."""
    if margin.value < limit:
        return "bad"
    return "good" if margin.low >= limit else "thin"


def _parts(links: tuple[Link, ...], *, limit: float) -> tuple[PartAnswer, ...]:
    worst = links[0]
    decides = worst.weakest
    under = exactly(worst.chance_under(limit), "-", decides.margin.basis)
    opened = exactly(min(one.likely_open_db for one in worst.hops), "dB", decides.margin.basis)
    found = [
        PartAnswer(name="level that arrives", estimate=decides.level),
        PartAnswer(name="noise at the receiver", estimate=decides.noise),
        PartAnswer(name=f"chance of a margin under {limit:g} dB", estimate=under),
        PartAnswer(name="margin with doors as they usually stand", estimate=opened),
    ]
    found += [
        PartAnswer(name=f"margin from {link.way.place_words}", estimate=link.margin)
        for link in links
        if link.way.place_words
    ]
    return tuple(found)


def _notes(house: Site, catalogue: Catalogue, links: tuple[Link, ...]) -> tuple[str, ...]:
    worst = links[0]
    decides = worst.weakest
    notes = [f"heard by {decides.hop.receiver.name}, {decides.path.length_m:.1f} m away"]
    if worst.way.place_words:
        notes.append(f"worst when pressed {_pressed_words(worst.way.place_words)}")
    if len(worst.hops) > 1:
        notes.append(f"goes by {worst.hops[0].hop.receiver.name}; its worse hop is told")
    costly = [f"{thing_words(house, met)} {met.loss_db:.0f} dB" for met in costly_on(decides)]
    if costly:
        notes.append("takes most: " + ", ".join(costly))
    classes = [row.id for row in catalogue.wall_losses]
    counted = dict(zip(classes, decides.path.counts, strict=True))
    if any(counted.get(one, 0.0) > SOME for one in UNKNOWN_CLASSES):
        notes.append("what some of its walls or panes are made of is not known, so the range is wide")
    return tuple(notes)


def _pressed_words(words: str) -> str:
    return words if words.startswith("before") else f"at {words}"


def _mends(
    house: Site,
    catalogue: Catalogue,
    device: Device,
    *,
    link: Link,
    outlets: tuple[Outlet, ...],
    heard: Heard,
    readings: tuple[ReadDevice, ...],
) -> tuple[Mend, ...]:
    """Another place of its own first, then a repeater; then what would narrow the range."""
    hop = link.weakest.hop
    site = house.model_copy(update={"outlets": outlets})
    found = [
        *other_place_mend(site, catalogue, device, hop=hop, heard=heard, readings=readings),
        *repeater_mend(site, catalogue, device, hop=hop, heard=heard, readings=readings),
    ]
    unknown = [met.thing for met in link.weakest.path.met if met.thing.wall_class in UNKNOWN_CLASSES]
    for thing in unknown[:1]:
        field = "construction" if thing.kind == "wall" else "glazing"
        found.append(Mend(action="tell", subject=thing.ident, values=(("field", field),)))
    return tuple(found)
