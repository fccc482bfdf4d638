"""The page a fitter keeps and shows a colleague: all of it as plain content, worst first."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass

from wardwright.documents.content.answer_block import OPEN, RACE, AnswerBlock, answer_block
from wardwright.documents.content.campaign_paper import campaign_sections
from wardwright.documents.content.facts import (
    BasisRow,
    FigureRow,
    basis_rows,
    figure_rows,
    guessed_facts,
)
from wardwright.documents.content.finding_block import FindingGroup, finding_groups
from wardwright.documents.content.headline import horizon_of
from wardwright.documents.content.locks import locks_and_lights
from wardwright.documents.content.names import names_of
from wardwright.documents.content.not_counted import NotCounted, counted, not_counted
from wardwright.documents.content.paper import Section
from wardwright.documents.content.plans import StoreyPlan, Storeys, finding_plans, storey_plans, storeys_of
from wardwright.documents.content.quantities import sentence
from wardwright.documents.content.suggestions import suggestions
from wardwright.documents.content.wording import VERDICTS
from wardwright.documents.drawing.plan import BasePlan
from wardwright.documents.drawing.recording import Drawing
from wardwright.intake.report import IntakeReport
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.answer import Answer, Verdict
from wardwright.questions.figures_used import figures_used
from wardwright.rules.finding import Finding
from wardwright.trials.campaign.results import CampaignReport

SUGGESTED_AT_MOST = 2
"""How many places of mends are drawn with an answer. [-]"""

LARGE_AT_MOST = 2
"""How many races that are lost, the worst, are drawn as large as the storeys. [-]"""


@dataclass(frozen=True, slots=True)
class VerdictCount:
    """How many answers have one verdict."""

    verdict: Verdict
    word: str
    words: str
    count: int


@dataclass(frozen=True, slots=True)
class Page:
    """Everything on the page, in its order."""

    house: str
    place: str
    scale: int
    """Of the plans on the page, on paper."""
    file_scale: int
    """Of the plans that are files of their own."""
    counts: tuple[VerdictCount, ...]
    must_mend: tuple[str, ...]
    locks_and_lights: tuple[str, ...]
    worth_adding: tuple[str, ...]
    storeys: tuple[StoreyPlan, ...]
    answers: tuple[AnswerBlock, ...]
    not_counted: NotCounted | None
    finding_groups: tuple[FindingGroup, ...]
    finding_plans: tuple[Drawing, ...]
    """Storeys on which a finding has a place."""
    were_rules_run: bool
    basis_rows: tuple[BasisRow, ...]
    guessed: tuple[str, ...]
    report: IntakeReport | None
    figures: tuple[FigureRow, ...]
    campaign: tuple[Section, ...]
    """What seeded intruders did; empty where none were sent."""


def page_of(  # noqa: PLR0917 - the four that every caller has, in this order
    site: Site,
    catalogue: Catalogue,
    answers: tuple[Answer, ...],
    findings: tuple[Finding, ...] | None,
    *,
    report: IntakeReport | None = None,
    worth_adding: tuple[str, ...] = (),
    campaign: CampaignReport | None = None,
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
    campaign : CampaignReport, optional
        What seeded intruders did, where they were sent.

    Returns
    -------
    Page
        Nothing in it is HTML.
    """
    names = names_of(site, catalogue)
    storeys = storeys_of(site, catalogue, answers)
    told = counted(answers)
    tally = Counter(answer.verdict for answer in told)
    groups = finding_groups(findings or (), names=names)
    return Page(
        house=site.name,
        place=_place(site),
        scale=storeys.shown[0].sheet.scale,
        file_scale=storeys.whole[0].sheet.scale,
        counts=tuple(
            VerdictCount(verdict, word, words, tally[verdict]) for verdict, (word, words) in VERDICTS.items()
        ),
        must_mend=tuple(
            block.message for group in groups if group.severity == "must mend" for block in group.findings
        ),
        locks_and_lights=locks_and_lights(answers, names),
        worth_adding=tuple(sentence(text) for text in worth_adding),
        storeys=storey_plans(storeys, site, catalogue, answers=answers),
        answers=_blocks(told, site, catalogue, storeys=storeys),
        not_counted=not_counted(answers),
        finding_groups=groups,
        finding_plans=finding_plans(findings or (), site, catalogue, bases=storeys.beside),
        were_rules_run=findings is not None,
        basis_rows=basis_rows(site),
        guessed=tuple(sentence(text) for text in guessed_facts(site)),
        report=report,
        figures=figure_rows(
            catalogue, used=figures_used(site, catalogue, numbers=(answer.question for answer in answers))
        ),
        campaign=() if campaign is None else campaign_sections(campaign, bases=storeys.beside),
    )


def _blocks(
    answers: tuple[Answer, ...], site: Site, catalogue: Catalogue, *, storeys: Storeys
) -> tuple[AnswerBlock, ...]:
    names, horizon_s = names_of(site, catalogue), horizon_of(catalogue)
    return tuple(
        answer_block(
            answer,
            rank=i,
            names=names,
            bases=_bases(answer, storeys, rank=i),
            suggested=suggestions(answer.mends, site, catalogue, at_most=SUGGESTED_AT_MOST),
            horizon_s=horizon_s,
        )
        for i, answer in enumerate(answers, start=1)
    )


def _bases(answer: Answer, storeys: Storeys, *, rank: int) -> tuple[BasePlan, ...]:
    """Little plans for what is printed and is not among the worst races, so that the page stays short on paper."""
    is_large = answer.verdict == "bad" and answer.question == RACE and rank <= LARGE_AT_MOST
    return storeys.little if answer.verdict in OPEN and not is_large else storeys.beside


def _place(site: Site) -> str:
    parts = [site.place.country or "country not known"]
    if site.place.latitude_deg is not None:
        side = "N" if site.place.latitude_deg >= 0 else "S"
        parts.append(f"latitude {abs(site.place.latitude_deg):.1f}\u00b0 {side}")
    parts.append({"uk-eu": "rules: UK and EU", "us": "rules: US"}[site.place.rule_pack])
    return ", ".join(parts)
