"""The page a fitter keeps and shows a colleague: all of it as plain content, worst first."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from wardwright.documents.content.answer_block import AnswerBlock, answer_block
from wardwright.documents.content.facts import (
    BasisRow,
    FigureRow,
    basis_rows,
    figure_rows,
    guessed_facts,
)
from wardwright.documents.content.finding_block import FindingGroup, finding_groups
from wardwright.documents.content.mends import LOCKS_AND_LIGHTS, mend_sentence
from wardwright.documents.content.names import Names, names_of
from wardwright.documents.content.quantities import sentence
from wardwright.documents.content.suggestions import suggestions
from wardwright.documents.content.wording import ACTIONS, NOT_DRAWN, NOT_WATCHED, VERDICTS
from wardwright.documents.drawing.devices import device_tags
from wardwright.documents.drawing.plan import BasePlan, base_plan, plan_with
from wardwright.documents.drawing.recording import Drawing
from wardwright.documents.drawing.sheet import SMALL_HEIGHT_MM, SMALL_WIDTH_MM, sheet_for
from wardwright.intake.report import IntakeReport
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.questions.answer import Answer, Verdict
from wardwright.rules.finding import Finding, Mend

SUGGESTED_AT_MOST = 2
"""How many places of mends are drawn with an answer. [-]"""


@dataclass(frozen=True, slots=True)
class VerdictCount:
    """How many answers have one verdict."""

    verdict: Verdict
    word: str
    words: str
    count: int


@dataclass(frozen=True, slots=True)
class DeviceLine:
    """One device in the key of a plan."""

    tag: str
    words: str
    name: str


@dataclass(frozen=True, slots=True)
class StoreyPlan:
    """One storey as it is noticed."""

    name: str
    drawing: Drawing
    devices: tuple[DeviceLine, ...]
    remark: str
    """Why nothing is drawn as noticed there; empty where something is."""


@dataclass(frozen=True, slots=True)
class Page:
    """Everything on the page, in its order."""

    house: str
    place: str
    scale: int
    counts: tuple[VerdictCount, ...]
    must_mend: tuple[str, ...]
    locks_and_lights: tuple[str, ...]
    worth_adding: tuple[str, ...]
    storeys: tuple[StoreyPlan, ...]
    answers: tuple[AnswerBlock, ...]
    finding_groups: tuple[FindingGroup, ...]
    finding_plans: tuple[Drawing, ...]
    """Storeys on which a finding has a place."""
    were_rules_run: bool
    basis_rows: tuple[BasisRow, ...]
    guessed: tuple[str, ...]
    report: IntakeReport | None
    figures: tuple[FigureRow, ...]


def page_of(  # noqa: PLR0917 - the four that every caller has, in this order
    site: Site,
    catalogue: Catalogue,
    answers: tuple[Answer, ...],
    findings: tuple[Finding, ...] | None,
    *,
    report: IntakeReport | None = None,
    worth_adding: tuple[str, ...] = (),
) -> Page:
    """Put a house, its answers and findings into words and drawings.

    Parameters
    ----------
    site : Site
        The house and all in it.
    catalogue : Catalogue
        Sheets and figures.
    answers : tuple of Answer
        Worst first, as they were asked.
    findings : tuple of Finding or None
        What the rules said; None if none was run, which is not the same as none found.
    report : IntakeReport, optional
        What an intake read, guessed and left out.
    worth_adding : tuple of str, default ()
        The missing facts that would move most answers.

    Returns
    -------
    Page
        Nothing in it is HTML.
    """
    names = names_of(site, catalogue)
    sheet = sheet_for(site)
    storeys = sorted(site.storeys, key=lambda storey: storey.elevation_m)
    small = sheet_for(site, width_mm=SMALL_WIDTH_MM, height_mm=SMALL_HEIGHT_MM)
    bases = tuple(base_plan(site, catalogue, storey_id=one.id, sheet=sheet) for one in storeys)
    beside = tuple(base_plan(site, catalogue, storey_id=one.id, sheet=small) for one in storeys)
    tally = Counter(answer.verdict for answer in answers)
    groups = finding_groups(findings or (), names=names)
    return Page(
        house=site.name,
        place=_place(site),
        scale=sheet.scale,
        counts=tuple(
            VerdictCount(verdict, word, words, tally[verdict]) for verdict, (word, words) in VERDICTS.items()
        ),
        must_mend=tuple(
            block.message for group in groups if group.severity == "must mend" for block in group.findings
        ),
        locks_and_lights=_locks_and_lights(answers, names),
        worth_adding=tuple(sentence(text) for text in worth_adding),
        storeys=tuple(_storey_plan(base, site, catalogue, answers=answers) for base in bases),
        answers=tuple(
            answer_block(
                answer,
                rank=i,
                names=names,
                bases=beside,
                suggested=suggestions(answer.mends, site, catalogue, at_most=SUGGESTED_AT_MOST),
            )
            for i, answer in enumerate(answers, start=1)
        ),
        finding_groups=groups,
        finding_plans=_finding_plans(findings or (), site, catalogue, bases=beside),
        were_rules_run=findings is not None,
        basis_rows=basis_rows(site),
        guessed=tuple(sentence(text) for text in guessed_facts(site)),
        report=report,
        figures=figure_rows(catalogue),
    )


def _place(site: Site) -> str:
    parts = [site.place.country or "country not known"]
    if site.place.latitude_deg is not None:
        side = "N" if site.place.latitude_deg >= 0 else "S"
        parts.append(f"latitude {abs(site.place.latitude_deg):.1f}\u00b0 {side}")
    parts.append({"uk-eu": "rules: UK and EU", "us": "rules: US"}[site.place.rule_pack])
    return ", ".join(parts)


def _locks_and_lights(answers: tuple[Answer, ...], names: Names) -> tuple[str, ...]:
    """The mends that hold somebody up, each once, in the answers' order; then one line for all the lights."""
    seen: dict[tuple[str, str], Mend] = {}
    for answer in answers:
        for mend in answer.mends:
            if mend.action in LOCKS_AND_LIGHTS:
                seen.setdefault((mend.action, mend.subject), mend)
    lights = [names.of(mend.subject) for mend in seen.values() if mend.action == "add-light"]
    locks = [mend_sentence(mend, names) for mend in seen.values() if mend.action != "add-light"]
    if len(lights) > 1:
        lights = [", ".join(lights[:-1]) + " and " + lights[-1]]
    return (*locks, *(sentence(ACTIONS["add-light"].format(name=name)) for name in lights))


def _finding_plans(
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


def _storey_plan(
    base: BasePlan, site: Site, catalogue: Catalogue, *, answers: tuple[Answer, ...]
) -> StoreyPlan:
    sketches = tuple(
        sketch
        for answer in answers
        for sketch in answer.sketches
        if sketch.role in ("seen", "possibly-seen") and sketch.storey == base.storey
    )
    tags = device_tags(site, catalogue)
    lines = tuple(DeviceLine(tags[one].text, tags[one].words, site.device(one).name) for one in base.devices)
    looks = any(tags[one].looks for one in base.devices)
    remark = "" if sketches else NOT_DRAWN if looks else NOT_WATCHED
    told = ", ".join(line.name for line in lines) or "no devices"
    drawing = plan_with(
        base,
        sketches,
        key=f"noticed-{base.storey}",
        title=f"{base.name}: what is noticed",
        description=f"Plan of {base.name} at 1:{base.sheet.scale} with {told}, and where a walker is noticed.",
    )
    return StoreyPlan(base.name, drawing, lines, remark)
