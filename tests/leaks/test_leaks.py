"""Nothing of one class of copy is found in another: the text of every file is read, hidden or not."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest

from common.fitted import DAY, as_text, codes_of, fitted, text_of
from common.given_houses import HOUSES, GivenHouse
from common.sensible_kit import with_sensible_kit
from leaks.secrets import leaks
from structure.test_words import PROMISES
from wardwright.costing.quote import Quote
from wardwright.documents.content.as_fitted import as_fitted
from wardwright.documents.content.campaign_paper import campaign_paper
from wardwright.documents.content.discretion import NO_NAME
from wardwright.documents.content.forms.contract import contract
from wardwright.documents.content.forms.dates import Event, events_of
from wardwright.documents.content.forms.guide import guide
from wardwright.documents.content.forms.handover import handover
from wardwright.documents.content.forms.label_sheet import label_sheet
from wardwright.documents.content.forms.leaving import leaving
from wardwright.documents.content.forms.logbook import logbook
from wardwright.documents.content.forms.proposal import proposal
from wardwright.documents.content.forms.risk import risk
from wardwright.documents.content.page import page_of
from wardwright.documents.content.paper import Column, CopyClass, Label, Paper, Section, Table
from wardwright.documents.content.plans import whole_plans
from wardwright.documents.papers import papers_of
from wardwright.documents.press import Press
from wardwright.documents.writers.csv_rows import write_csv
from wardwright.documents.writers.ics import write_ics
from wardwright.documents.writers.paper_html import write_paper_html
from wardwright.documents.writers.pdf import write_pdf
from wardwright.documents.writers.xlsx import write_xlsx
from wardwright.model.revision import replaced
from wardwright.model.site import Site
from wardwright.questions.quoted import quote_of
from wardwright.questions.table import ask
from wardwright.rules.table import check
from wardwright.store.catalogue import load_catalogue
from wardwright.store.firms import sample_firm
from wardwright.store.fonts import font_folder
from wardwright.store.samples import read_sample, sample_names
from wardwright.trials.campaign.report import report_of
from wardwright.trials.campaign.results import CampaignReport
from wardwright.trials.campaign.run import campaign

CATALOGUE = load_catalogue()
SITES = {"fitted": fitted, **{name: lambda name=name: read_sample(name) for name in sample_names()}}


@cache
def campaign_of(name: str) -> CampaignReport:
    return report_of(campaign(SITES[name](), CATALOGUE, trials=500), CATALOGUE)


@cache
def quote_by_name(name: str) -> Quote:
    site = SITES[name]()
    return quote_of(site, CATALOGUE, answers=ask(site, CATALOGUE), firm=sample_firm("example-alarms"))


def of_the_offer(quote: Quote) -> tuple[str, ...]:
    """What a quote must tell: what a customer pays, shares of tax and deposit, and how the firm is reached."""
    shown = [line for option in quote.options for line in option.for_the_customer]
    amounts = [amount for line in shown for amount in (line.each, line.amount)]
    amounts += [
        one for option in quote.options for one in (option.net, option.tax, option.gross, option.difference)
    ]
    upkeep = quote.upkeep
    if upkeep is not None:
        amounts += [upkeep.amount, *(one for line in upkeep.lines for one in (line.each, line.amount))]
    firm = quote.firm
    assert firm is not None
    number = "" if firm.tax is None else firm.tax.registration
    shares = [quote.tax_percent, firm.deposit_percent]
    told = [f"{one.normalize():f} %" for one in shares if one is not None]
    return (*(f"{one:.2f}" for one in amounts if one is not None), *told, firm.phone, *firm.address, number)


def papers(site: Site, sent: CampaignReport, quote: Quote) -> dict[str, bytes]:
    answers = ask(site, CATALOGUE)
    page = page_of(site, CATALOGUE, answers, check(site, CATALOGUE), campaign=sent)
    return papers_of(
        site,
        CATALOGUE,
        page=page,
        answers=answers,
        drawn_up=DAY,
        press=Press(font_folder()),
        campaign=sent,
        quote=quote,
    )


@cache
def papers_by_name(name: str) -> dict[str, bytes]:
    return papers(SITES[name](), campaign_of(name), quote_by_name(name))


def found_in(
    files: dict[str, bytes], site: Site, folder: str, own: tuple[str, ...] = ()
) -> dict[str, tuple[str, ...]]:
    return {
        name: leaks(f"{name}\n{text_of(name, content)}", site, CATALOGUE, is_open=folder == "open", own=own)
        for name, content in files.items()
        if name.startswith(f"{folder}/")
    }


@pytest.mark.parametrize("name", SITES)
@pytest.mark.parametrize("folder", ["client-confidential", "open"])
def test_a_copy_holds_nothing_that_its_class_must_not(name: str, folder: str) -> None:
    own = of_the_offer(quote_by_name(name))
    found = found_in(papers_by_name(name), SITES[name](), folder, own=own)
    assert found
    assert not any(found.values()), {file: told for file, told in found.items() if told}


@pytest.mark.parametrize("name", ["terrace", "fitted"])
def test_the_fitters_copy_holds_what_the_others_must_not(name: str) -> None:
    """The search can fail: in the fitter's files it finds times, lengths and the control unit's place."""
    found = found_in(papers_by_name(name), SITES[name](), "fitter")
    for file in ("fitter/page.html", "fitter/plan.pdf", "fitter/schedule.xlsx", "fitter/devices.csv"):
        assert any("withheld" in one for one in found[file]), file
    for file in ("fitter/page.html", "fitter/plan.pdf", "fitter/plan-noticed-ground.svg"):
        assert any(one.startswith("a time") for one in found[file]), file
    assert any(one.startswith("household") for one in found["fitter/page.html"])
    every = {one.partition(":")[0] for told in found.values() for one in told}
    assert {"a time, a length, an angle or a share", "a number with decimals", "a drawing"} <= every


@pytest.mark.parametrize("name", SITES)
def test_no_paper_of_any_class_promises_what_no_alarm_can(name: str) -> None:
    for file, content in papers_by_name(name).items():
        assert PROMISES.findall(text_of(file, content)) == [], file


def test_a_promise_would_be_found() -> None:
    paper = Paper("T", "house", "open", DAY, (Section("S", text=("It deters, and is certified.",)),))
    found = PROMISES.findall(text_of("t.pdf", write_pdf(paper, font_folder=font_folder())))
    assert found == ["deters", "certified"]


CAMPAIGN_WORDS = ("seeded intruders", "least likely noticed", "the design loses", "binomial")


@pytest.mark.parametrize("name", SITES)
def test_a_campaign_is_in_the_fitters_copy_and_in_no_other(name: str) -> None:
    holding = {
        file
        for file, content in papers_by_name(name).items()
        if any(word in text_of(file, content) for word in CAMPAIGN_WORDS)
    }
    assert {"fitter/campaign.pdf", "fitter/page.html"} <= holding
    assert not [file for file in holding if not file.startswith("fitter/")]


@pytest.mark.parametrize("copy", ["client", "open"])
def test_a_campaign_planted_in_another_copy_is_found(copy: CopyClass) -> None:
    site = read_sample("terrace")
    bases = whole_plans(site, CATALOGUE)
    whole = campaign_paper(campaign_of("terrace"), bases=bases, house=site.name, drawn_up=DAY)
    planted = (
        proposal(site, CATALOGUE, (), drawn_up=DAY)
        if copy == "client"
        else as_fitted(site, CATALOGUE, drawn_up=DAY)
    )
    clean = text_of("p.pdf", write_pdf(planted, font_folder=font_folder()))
    assert leaks(clean, site, CATALOGUE, is_open=copy == "open") == ()
    for section in whole.sections:
        with_it = replace(planted, sections=(*planted.sections, section))
        text = text_of("p.pdf", write_pdf(with_it, font_folder=font_folder()))
        found = leaks(text, site, CATALOGUE, is_open=copy == "open")
        # What nobody knows tells nothing of this house.
        assert bool(found) == (section.heading != "What these numbers cannot know"), section.heading


CANARIES = (
    "12.4 s", "after 12 s", "3 m along", "31 \u00b0", "code 4711", "undetected", "small valuables", "grandmother",
    "Ground hall control unit", "the control unit is in the Hall", "not watched",
)  # fmt: skip


@pytest.mark.parametrize("canary", CANARIES)
@pytest.mark.parametrize("kind", ["pdf", "csv", "xlsx", "html"])
def test_a_canary_is_found_in_every_kind_of_file(canary: str, kind: str) -> None:
    site = read_sample("terrace")
    table = Table("Canary", (Column("Words"),), ((canary,),))
    paper = Paper("Canary", "house", "open", DAY, (Section("Canary", table=table),))
    content = {
        "pdf": lambda: write_pdf(paper, font_folder=font_folder()),
        "csv": lambda: write_csv(table),
        "xlsx": lambda: write_xlsx(paper),
        "html": lambda: write_paper_html(paper),
    }[kind]()
    assert leaks(text_of(f"canary.{kind}", content), site, CATALOGUE, is_open=True)


@pytest.mark.parametrize("canary", CANARIES)
def test_a_canary_in_a_square_code_or_a_calendar_is_found(canary: str) -> None:
    site = read_sample("terrace")
    label = Label(code=canary, title="quiet", lines=())
    paper = Paper("Canary", "house", "open", DAY, (Section("Canary", labels=(label,)),))
    content = write_pdf(paper, font_folder=font_folder())
    assert codes_of(content) == [canary], "read from the picture, not from the words beside it"
    assert leaks("\n".join(codes_of(content)), site, CATALOGUE, is_open=True)
    for event in (Event(DAY, canary), Event(DAY, "quiet", canary)):
        days = write_ics("house", (event,), drawn_up=DAY)
        assert leaks(text_of("canary.ics", days), site, CATALOGUE, is_open=True)


def test_what_the_firm_pays_is_found_beside_what_it_asks() -> None:
    """A quote may tell its own amounts and no others."""
    quote, site = quote_by_name("terrace"), read_sample("terrace")
    own = of_the_offer(quote)
    cost = next(f"{line.cost:.2f}" for line in quote.options[0].lines if line.kind == "part")
    assert cost not in own
    text = ("With tax", own[0], cost)
    paper = Paper("Quote", "house", "client", DAY, (Section("S", text=text),))
    content = write_pdf(paper, font_folder=font_folder())
    found = leaks(text_of("quote.pdf", content), site, CATALOGUE, is_open=False, own=own)
    assert len(found) == 1


def test_a_file_name_is_looked_at_too() -> None:
    site = read_sample("terrace")
    found = found_in({"open/12.4 s.csv": write_csv(Table("T", (Column("A"),), ()))}, site, "open")
    assert found["open/12.4 s.csv"]


@pytest.mark.parametrize(
    "hidden", ["<!-- 12.4 s -->", '<p data-race="12.4 s"></p>', '<p title="12.4 s"></p>']
)
def test_what_is_hidden_in_a_page_is_found(hidden: str) -> None:
    assert leaks(text_of("page.html", hidden.encode()), read_sample("terrace"), CATALOGUE, is_open=False)


def unit_elsewhere(site: Site) -> Site:
    """The control unit in the place of the keypad, and called after it."""
    keypad = next(one for one in site.devices if "keypad" in one.id)
    devices = tuple(
        one.model_copy(update={"mount": keypad.mount, "name": "Elsewhere control unit"})
        if "control-unit" in one.id
        else one
        for one in site.devices
    )
    assert devices != site.devices
    return replaced(site, devices=devices)


CHANGES: dict[str, Callable[[Site], Site]] = {
    "the control unit moved": unit_elsewhere,
    "other times": lambda site: replaced(
        site, programme=site.programme.model_copy(update={"entry_time_s": 77.0, "abort_delay_s": 55.0})
    ),
    "nobody and no pets": lambda site: replaced(site, people=(), pets=(), targets=()),
    "weaker locks": lambda site: replaced(
        site, openings=tuple(one.model_copy(update={"lock": "none"}) for one in site.openings)
    ),
}


@pytest.mark.parametrize("change", CHANGES)
def test_the_open_copy_does_not_hang_on_what_it_must_not_tell(change: str) -> None:
    site = fitted()
    other = CHANGES[change](site)
    assert other != site
    for content in (as_fitted, guide, logbook, label_sheet):
        assert content(other, CATALOGUE, drawn_up=DAY) == content(site, CATALOGUE, drawn_up=DAY)
    days = [events_of(one, CATALOGUE, (), drawn_up=DAY, is_open=True) for one in (other, site)]
    assert days[0] == days[1]


@pytest.mark.parametrize("change", ["the control unit moved", "other times", "nobody and no pets"])
def test_for_the_same_answers_the_clients_copy_does_not_either(change: str) -> None:
    site = fitted()
    answers = ask(site, CATALOGUE)
    other = CHANGES[change](site)
    # The risk record tells in how many rooms something is worth taking, and so hangs on the household.
    for content in (proposal,) if change == "nobody and no pets" else (proposal, risk):
        assert content(other, CATALOGUE, answers, drawn_up=DAY) == content(
            site, CATALOGUE, answers, drawn_up=DAY
        )
    for bare in (contract, leaving):
        assert bare(other, CATALOGUE, drawn_up=DAY) == bare(site, CATALOGUE, drawn_up=DAY)


def test_an_opening_called_after_the_control_unit_gives_no_place_away() -> None:
    site = read_sample("terrace")
    openings = tuple(
        one.model_copy(update={"name": "Control unit window"}) if one.id == "kitchen-window" else one
        for one in site.openings
    )
    named = replaced(site, openings=openings)
    answers = ask(named, CATALOGUE)
    assert any(mend.subject == "kitchen-window" for answer in answers for mend in answer.mends)
    paper = proposal(named, CATALOGUE, answers, drawn_up=DAY)
    assert "control unit window" not in as_text(paper).casefold()
    assert NO_NAME in as_text(paper)


@pytest.mark.parametrize("house", HOUSES[::7], ids=lambda one: one.name)
def test_given_houses_leak_nothing(house: GivenHouse, given: Callable[[str], Path]) -> None:
    site = with_sensible_kit(house.brought(given(house.file)).site, CATALOGUE)
    answers = ask(site, CATALOGUE)
    client = proposal(site, CATALOGUE, answers, drawn_up=DAY)
    told = [content(site, CATALOGUE, answers, drawn_up=DAY) for content in (proposal, risk, handover)]
    told += [content(site, CATALOGUE, drawn_up=DAY) for content in (contract, leaving, guide, logbook)]
    for paper in told:
        assert leaks(as_text(paper), site, CATALOGUE, is_open=paper.copy == "open") == (), paper.title
    for paper in (
        client,
        as_fitted(site, CATALOGUE, drawn_up=DAY),
        label_sheet(site, CATALOGUE, drawn_up=DAY),
    ):
        text = text_of("paper.pdf", write_pdf(paper, font_folder=font_folder()))
        assert leaks(text, site, CATALOGUE, is_open=paper.copy == "open") == ()
