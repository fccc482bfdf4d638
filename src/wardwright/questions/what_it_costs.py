"""Question 16: what will the job take and cost, and which choice moves it?"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache
from typing import TYPE_CHECKING

from wardwright.costing.choices_tried import Choice, choices_for
from wardwright.costing.labour import Labour, labour_of
from wardwright.costing.option import QuoteOption
from wardwright.costing.pricing import priced, return_cost
from wardwright.costing.rates import NO_CURRENCY, Rates, rates_of
from wardwright.costing.return_visits import Risk, chance_of_return, risk_inputs
from wardwright.costing.tasks import new_devices
from wardwright.costing.upkeep import Upkeep, upkeep_of
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.questions import battery_ends
from wardwright.questions.answer import Answer, PartAnswer, Verdict, about_the_site, unanswered
from wardwright.questions.return_risks import return_risks
from wardwright.rules.registry import exactly
from wardwright.trials.draws import estimate_of

if TYPE_CHECKING:  # not loaded by `ask`, whose budget is small
    from wardwright.costing.price_list import PriceList

NUMBER = 16
HOURS, PRICE, BACK, UPKEEP = (
    "of work until it is handed over, travel included",
    "for the job",
    "how likely a return visit is in the first year",
    "a year to keep it going, before tax",
)
CHOICES_SHOWN = 3
LIKELY, RATHER = 0.5, 0.25
"""From here on a return visit is likely, or no surprise. [-] (assumption)"""


def answers(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """Hours, price, the return visit to be expected, and upkeep.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        Sheets, times and made-up rates: a firm's own come with `quote`.

    Returns
    -------
    tuple of Answer
        One, not computable, where nothing is to be fitted.
    """
    if not new_devices(site):
        reason = (
            "no devices" if not site.devices else "nothing is to be fitted: all devices were there before"
        )
        return (about_the_site(NUMBER, HOURS, site=site, reason=reason),)
    rates, risks = rates_of(site, catalogue), return_risks(site, catalogue)
    labour = labour_of(site, catalogue, (*rates.inputs, *risk_inputs(catalogue, risks)))
    if labour is None:  # there is a new device, so there is work
        return ()
    return (
        _hours(site, catalogue, labour),
        _price(priced(site, catalogue, rates, risks=risks), rates, risks=risks, labour=labour),
        _return_visit(risks, labour),
        _upkeep(upkeep_for(site, catalogue, rates)),
    )


def upkeep_for(site: Site, catalogue: Catalogue, rates: Rates, *, prices: PriceList | None = None) -> Upkeep:
    """What a site's kit costs to keep going, with the batteries' lives of question 15.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        Sheets and cells.
    rates : Rates
        What is charged.
    prices : PriceList, optional
        The firm's own.

    Returns
    -------
    Upkeep
        Where a battery's life or price is not known, it says so.
    """
    return upkeep_of(site, catalogue, rates, lives=lives_of(site, catalogue), prices=prices)


def lives_of(site: Site, catalogue: Catalogue) -> Mapping[str, Estimate | None]:
    """How long each device's battery lasts, by question 15. [a]"""
    known = {device.id for device in site.devices}
    found = battery_ends.answers(site, catalogue)
    return {one.subject_id: one.estimate for one in found if one.subject_id in known}


def _hours(site: Site, catalogue: Catalogue, labour: Labour) -> Answer:
    tried = choices_for(site, catalogue)
    free = [one for one in tried if not one.broken]
    return Answer(
        question=NUMBER,
        subject="hours",
        subject_id="site",
        measure=HOURS,
        estimate=labour.hours,
        verdict="good",
        parts=tuple(PartAnswer(name=phase, estimate=hours) for phase, hours in labour.hours_by_phase.items()),
        notes=(
            f"{labour.journeys} journeys: there and back for the survey and for each day of work",
            *_given_up(site, tried),
        ),
        mends=tuple(one.mend for one in free[:CHOICES_SHOWN]),
    )


def _given_up(site: Site, tried: tuple[Choice, ...]) -> tuple[str, ...]:
    """What would save work and is no cure, since it breaks a rule."""
    names = {device.id: device.name for device in site.devices}
    found = []
    for one in [one for one in tried if one.broken][:CHOICES_SHOWN]:
        gain = one.mend.gain
        what = ", ".join(
            f"{key.removesuffix('_m').replace('_', ' ')} {value}" for key, value in one.mend.values
        )
        minutes = 0.0 if gain is None else gain.value
        found.append(
            f"{names[one.mend.subject]} otherwise ({what}) would save {minutes:.0f} min, but breaks "
            + " and ".join(one.broken)
        )
    return tuple(found)


@lru_cache(maxsize=64)
def _price(option: QuoteOption | None, rates: Rates, *, risks: tuple[Risk, ...], labour: Labour) -> Answer:
    with_tax = f"with {rates.tax_name}" if rates.tax_percent is not None else "before tax"
    notes = [
        "prices and rates are made up for this catalogue: give your own to `quote`",
        rates.tax_note,
    ]
    if rates.currency == NO_CURRENCY:
        notes.append("the currency is not known: tell the country")
    if option is None or option.price is None:
        missing = () if option is None else option.not_priced
        return unanswered(
            NUMBER,
            PRICE,
            subject="price",
            subject_id="site-price",
            reason=f"not computable: {'; '.join(missing)}",
        )
    sums = {
        kind: sum(float(line.amount or 0) for line in option.lines if line.kind == kind) for kind in KINDS
    }
    parts = [
        PartAnswer(name=KINDS[kind], estimate=exactly(one, rates.currency, "default"))
        for kind, one in sums.items()
    ]
    parts.append(
        PartAnswer(
            name="the return visit to be expected",
            estimate=estimate_of(return_cost(labour, risks), labour.cases, unit=rates.currency),
        )
    )
    return Answer(
        question=NUMBER,
        subject="price",
        subject_id="site-price",
        measure=f"{PRICE}, {with_tax}",
        estimate=option.price,
        verdict="good",
        parts=tuple(parts),
        notes=tuple(notes),
    )


KINDS = {
    "part": "parts, before tax",
    "consumables": "fixings and consumables",
    "work": "work",
    "travel": "travel",
    "contingency": "contingency",
}


@lru_cache(maxsize=64)
def _return_visit(risks: tuple[Risk, ...], labour: Labour) -> Answer:
    chance = estimate_of(chance_of_return(risks, labour.cases), labour.cases, unit="-")
    verdict: Verdict = "bad" if chance.value >= LIKELY else "thin" if chance.value >= RATHER else "good"
    return Answer(
        question=NUMBER,
        subject="return visit",
        subject_id="site-return-visit",
        measure=BACK,
        estimate=chance,
        verdict=verdict,
        parts=(
            PartAnswer(
                name="chance without any of these risks",
                estimate=estimate_of(chance_of_return((), labour.cases), labour.cases, unit="-"),
            ),
        ),
        notes=tuple(f"{one.code}: {one.message}" for one in risks)
        or ("no risk was found that brings fitters back; what could not be checked is not among them",),
    )


@lru_cache(maxsize=64)
def _upkeep(upkeep: Upkeep) -> Answer:
    if upkeep.a_year is None:
        return unanswered(
            NUMBER,
            UPKEEP,
            subject="upkeep",
            subject_id="site-upkeep",
            reason=f"not computable: {'; '.join(upkeep.not_known)}",
        )
    return Answer(
        question=NUMBER,
        subject="upkeep",
        subject_id="site-upkeep",
        measure=UPKEEP,
        estimate=upkeep.a_year,
        verdict="good",
        parts=tuple(
            PartAnswer(
                name=f"{line.what}, over {upkeep.years} years",
                estimate=exactly(float(line.amount or 0), upkeep.a_year.unit, "default"),
            )
            for line in upkeep.lines
        ),
        notes=(f"on average over {upkeep.years} years",),
    )
