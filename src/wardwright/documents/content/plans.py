"""The plans of a page: each storey as it is noticed, and where findings are."""

from __future__ import annotations

from dataclasses import dataclass
from typing import NamedTuple

from wardwright.documents.content.suggestions import suggestions
from wardwright.documents.content.wording import NOT_DRAWN, NOT_WATCHED
from wardwright.documents.drawing.devices import Tag, device_tags
from wardwright.documents.drawing.plan import BasePlan, base_plan, plan_with
from wardwright.documents.drawing.recording import Drawing
from wardwright.documents.drawing.sheet import HALF, QUARTER, WHOLE, Sheet, sheet_for
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.questions.answer import Answer
from wardwright.rules.finding import Finding

LITTLE_SCALE = 200
"""A drawing is not made littler than 1 to this for want of room. [-]"""


class Storeys(NamedTuple):
    """The storeys' plans, the lowest first, at each of the sizes that a page needs."""

    whole: tuple[BasePlan, ...]
    """As large as fits a page: files of their own."""
    shown: tuple[BasePlan, ...]
    """For the page's own plans: two abreast where there are several."""
    beside: tuple[BasePlan, ...]
    """For what is drawn with an answer."""
    little: tuple[BasePlan, ...]
    """For answers that are close."""


@dataclass(frozen=True, slots=True)
class DeviceLine:
    """One device in the key of a plan."""

    tag: str
    words: str
    """What it is; empty where its name says so."""
    name: str


@dataclass(frozen=True, slots=True)
class StoreyPlan:
    """One storey as it is noticed."""

    name: str
    drawing: Drawing
    """As large as fits a page: a file of its own."""
    shown: Drawing
    """On the page."""
    devices: tuple[DeviceLine, ...]
    remark: str
    """Why nothing is drawn as noticed there; empty where something is."""


def storeys_of(site: Site, catalogue: Catalogue, answers: tuple[Answer, ...]) -> Storeys:
    """Draw every storey of a house at each size; a size that two uses share is drawn once.

    Parameters
    ----------
    site : Site
        The house.
    catalogue : Catalogue
        Says what its devices are.
    answers : tuple of Answer
        The walks of all of them are kept clear of labels.

    Returns
    -------
    Storeys
        Storeys from the lowest up.
    """
    ways = tuple(sketch for answer in answers for sketch in answer.sketches if sketch.role == "walk")
    found: dict[Sheet, tuple[BasePlan, ...]] = {}

    def drawn(sheet: Sheet) -> tuple[BasePlan, ...]:
        if sheet not in found:
            found[sheet] = rising_plans(site, catalogue, sheet=sheet, ways=ways)
        return found[sheet]

    whole, half, little = (sheet_for(site, room=room) for room in (WHOLE, HALF, QUARTER))
    if little.scale > LITTLE_SCALE:
        little = half
    return Storeys(drawn(whole), drawn(half if len(site.storeys) > 1 else whole), drawn(half), drawn(little))


def whole_plans(site: Site, catalogue: Catalogue) -> tuple[BasePlan, ...]:
    """Every storey as large as fits a page, the lowest first."""
    return rising_plans(site, catalogue, sheet=sheet_for(site, room=WHOLE))


def rising_plans(
    site: Site, catalogue: Catalogue, *, sheet: Sheet, ways: tuple[Sketch, ...] = ()
) -> tuple[BasePlan, ...]:
    """Every storey on a sheet, the lowest first; walks are kept clear of labels."""
    storeys = sorted(site.storeys, key=lambda storey: storey.elevation_m)
    return tuple(base_plan(site, catalogue, storey_id=one.id, sheet=sheet, ways=ways) for one in storeys)


def finding_plans(
    findings: tuple[Finding, ...], site: Site, catalogue: Catalogue, *, bases: tuple[BasePlan, ...]
) -> tuple[Drawing, ...]:
    """One plan a storey with the places of findings, each called by its code, and of what would mend them."""
    sketches: list[Sketch] = []
    for finding in findings:
        sketches += [
            sketch.model_copy(update={"label": finding.code})
            for sketch in finding.sketches
            if sketch.role == "fault"
        ]
    mends = [mend for finding in findings for mend in finding.mends]
    sketches += suggestions(mends, site, catalogue, at_most=len(mends))
    return tuple(
        plan_with(
            base,
            tuple(sketches),
            key=f"findings-{base.storey}",
            title=f"{base.name}: findings",
            description=f"Plan of {base.name} at 1:{base.sheet.scale} with the places of the findings.",
        )
        for base in bases
        if any(sketch.storey == base.storey for sketch in sketches)
    )


def storey_plans(
    storeys: Storeys, site: Site, catalogue: Catalogue, *, answers: tuple[Answer, ...]
) -> tuple[StoreyPlan, ...]:
    """Each storey with its devices and where a walker is noticed on it."""
    return tuple(
        _storey_plan((whole, shown), site, catalogue, answers=answers)
        for whole, shown in zip(storeys.whole, storeys.shown, strict=True)
    )


def _storey_plan(
    bases: tuple[BasePlan, BasePlan], site: Site, catalogue: Catalogue, *, answers: tuple[Answer, ...]
) -> StoreyPlan:
    base = bases[0]
    sketches = tuple(
        sketch
        for answer in answers
        for sketch in answer.sketches
        if sketch.role in ("seen", "possibly-seen") and sketch.storey == base.storey
    )
    tags = device_tags(site, catalogue)
    lines = tuple(_device_line(tags[one], site.device(one).name) for one in base.devices)
    looks = any(tags[one].looks for one in base.devices)
    remark = "" if sketches else NOT_DRAWN if looks else NOT_WATCHED
    told = ", ".join(line.name for line in lines) or "no devices"
    drawing, shown = (
        plan_with(
            one,
            sketches,
            key=f"noticed-{one.storey}",
            title=f"{one.name}: what is noticed",
            description=f"Plan of {one.name} at 1:{one.sheet.scale} with {told}, and where a walker is noticed.",
        )
        for one in bases
    )
    return StoreyPlan(base.name, drawing, shown, lines, remark)


def _device_line(tag: Tag, name: str) -> DeviceLine:
    is_told = any(word in name.lower() for word in tag.words.replace(",", "").split())
    return DeviceLine(tag.text, "" if is_told else tag.words, name)
