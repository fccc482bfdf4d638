"""Question 15: when does each battery end, and can they be done in one visit?"""

from __future__ import annotations

from collections.abc import Mapping
from functools import lru_cache

from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.estimate import Driver, Estimate
from wardwright.model.lifetimes import after_years
from wardwright.model.site import Site
from wardwright.physics.power.from_site import OnCells, on_cells
from wardwright.questions.answer import Answer, PartAnswer, Verdict, about_the_site, unanswered
from wardwright.questions.battery_mends import cell_mends
from wardwright.questions.link_margins import link_margins
from wardwright.questions.visit_plan import VisitPlan, visit_plan
from wardwright.trials.cell_lives import Lasting, Margin, Setting, lasting_in, setting_of
from wardwright.trials.draws import estimate_of

NUMBER = 15
MEASURE = "until its battery ends"
VISITS_MEASURE = "from one visit for batteries to the next"
SERVICE = "service-interval"
"""The limit that says how often somebody comes anyway."""


def answers(
    site: Site, catalogue: Catalogue, margins: Mapping[str, Margin] | None = None
) -> tuple[Answer, ...]:
    """One answer for each device with a battery, and one for the visits.

    Parameters
    ----------
    site : Site
        The house, who lives there, and its devices.
    catalogue : Catalogue
        Sheets, cells and figures.
    margins : mapping of str to Margin, optional
        Of the radio links, by device; left out: those that the radio engine gives.

    Returns
    -------
    tuple of Answer
        Not computable where there is no device at all.
    """
    return _by_engine(site, catalogue) if margins is None else _answers(site, catalogue, margins)


@lru_cache(maxsize=8)
def _by_engine(site: Site, catalogue: Catalogue) -> tuple[Answer, ...]:
    """Remembered: what a job costs asks for the same lives."""
    return _answers(site, catalogue, link_margins(site, catalogue) if site.devices else {})


def _answers(site: Site, catalogue: Catalogue, known: Mapping[str, Margin]) -> tuple[Answer, ...]:
    if not site.devices:
        return (about_the_site(NUMBER, VISITS_MEASURE, site=site, reason="no device"),)
    interval = catalogue.limit(SERVICE, site.place.rule_pack).value
    devices = sorted(site.devices, key=lambda one: one.id)
    lives: dict[str, Estimate] = {}
    found: list[Answer] = []
    for device in devices:
        answer = _of(site, catalogue, device, margin=known.get(device.id), interval=interval)
        if answer is not None:
            found.append(answer)
            if answer.estimate is not None:
                lives[device.id] = answer.estimate
    if not found:
        return (about_the_site(NUMBER, VISITS_MEASURE, site=site, reason="no device has a battery"),)
    return (*found, _visits(site, catalogue, lives, answers=tuple(found), margins=known, interval=interval))


def _of(
    site: Site, catalogue: Catalogue, device: Device, *, margin: Margin | None, interval: float
) -> Answer | None:
    one = on_cells(device, catalogue)
    if one is not None:
        setting = setting_of(site, catalogue, device)
        answer = _of_cells(catalogue, one, setting, margin=margin, interval=interval)
        if answer.verdict == "good" or answer.estimate is None:
            return answer
        mends = cell_mends(site, catalogue, one, now=answer.estimate, margin=margin)
        return answer.model_copy(update={"mends": mends})
    sheet = catalogue.sheet(device.sheet)
    if sheet.standby is not None:
        return _of_a_standby_battery(device, sheet, catalogue, interval=interval)
    if sheet.power == "cell":
        return unanswered(
            NUMBER, MEASURE, subject=device.name, subject_id=device.id,
            reason="not computable: its sheet does not say what it draws from which cells",
        )  # fmt: skip
    return None


@lru_cache(maxsize=256)
def _of_cells(
    catalogue: Catalogue, one: OnCells, setting: Setting, *, margin: Margin | None, interval: float
) -> Answer:
    """The answer about a device but for its mends, which hang on the site's programme, too."""
    life = lasting_in(catalogue, one, setting, margin=margin)
    estimate = estimate_of(life.years, life.cases, unit="a")
    verdict: Verdict = "bad" if estimate.value < interval else "thin" if estimate.low < interval else "good"
    messages = sum((share * life.cases.rows[name] for name, share in life.traffic.shares), 0.0 * life.years)
    parts = [PartAnswer(name="check-ins a day", estimate=_exactly(one.check_ins, "d-1"))]
    if life.traffic.shares:
        parts.append(
            PartAnswer(
                name="messages a day besides",
                estimate=estimate_of(messages.clip(max=life.traffic.most), life.cases, unit="d-1"),
            )
        )
    return Answer(
        question=NUMBER,
        subject=one.device.name,
        subject_id=one.device.id,
        measure=MEASURE,
        estimate=estimate,
        verdict=verdict,
        parts=tuple(parts),
        notes=_notes(life, estimate),
    )


def _exactly(value: float, unit: str) -> Estimate:
    return Estimate(value=value, low=value, high=value, unit=unit, basis="told")


def _notes(life: Lasting, estimate: Estimate) -> tuple[str, ...]:
    one = life.one
    notes = [f"{one.cells.count} x {one.cell.name}" if one.cells.count > 1 else one.cell.name]
    if not life.traffic.is_known:
        notes.append("how often it sends is a default: nobody is known who would pass it")
    if one.check_in_min is None:
        notes.append("its sheet does not say how often it checks in: none is counted")
    shelf = one.cell.shelf_years
    if shelf is not None and estimate.value >= shelf:
        notes.append("cut at how long such a cell keeps")
    if one.device.cells_since is not None:
        first, last = (after_years(one.device.cells_since, years) for years in (estimate.low, estimate.value))
        notes.append(f"by its date from {first:%Y-%m} on, likely in {last:%Y-%m}")
    return tuple(notes)


def _of_a_standby_battery(
    device: Device, sheet: DeviceSheet, catalogue: Catalogue, *, interval: float
) -> Answer | None:
    """A battery that is charged again and again ends by its age."""
    if sheet.standby is None:
        return None
    battery = catalogue.cell(sheet.standby.battery)
    low, high = battery.service_low_years, battery.service_high_years
    if low is None or high is None:
        return unanswered(
            NUMBER, MEASURE, subject=device.name, subject_id=device.id,
            reason="not computable: its row does not say at which age it is changed",
        )  # fmt: skip
    driver = Driver(name="age at which such batteries are changed", swing=high - low, basis="default")
    return Answer(
        question=NUMBER,
        subject=device.name,
        subject_id=device.id,
        measure=MEASURE,
        estimate=Estimate(
            value=(low + high) / 2, low=low, high=high, unit="a", drivers=(driver,), basis="default"
        ),
        verdict="good" if low >= interval else "thin",
        notes=(battery.name, "warm places halve its life for every 10 degrees"),
    )


def _visits(
    site: Site,
    catalogue: Catalogue,
    lives: Mapping[str, Estimate],
    *,
    answers: tuple[Answer, ...],
    margins: Mapping[str, Margin],
    interval: float,
) -> Answer:
    """The answer about the visits: how far apart, and who is done at each."""
    plan = visit_plan({name: one.low for name, one in lives.items()}, interval=interval)
    if plan is None:
        return about_the_site(NUMBER, VISITS_MEASURE, site=site, reason="no battery's life is known")
    shortest = min(lives, key=lambda name: (lives[name].low, name))
    one = lives[shortest]
    likely = visit_plan({name: each.value for name, each in lives.items()}, interval=interval)
    longest = visit_plan({name: each.high for name, each in lives.items()}, interval=interval)
    values = sorted(each.apart for each in (plan, likely, longest) if each is not None)
    unknown = [answer.subject for answer in answers if answer.estimate is None]
    verdict: Verdict = "bad" if one.value < interval else "thin" if one.low < interval else "good"
    device = site.device(shortest)
    cells = on_cells(device, catalogue)
    return Answer(
        question=NUMBER,
        subject="visits for batteries",
        subject_id="site",
        measure=VISITS_MEASURE,
        # Planned by the low ends: so many years are sure. The range is what the lives themselves would let.
        estimate=Estimate(
            value=plan.apart,
            low=min(values),
            high=max(values),
            unit="a",
            drivers=one.drivers[:2],
            basis=one.basis,
        ),
        verdict=verdict,
        notes=(*_plan_notes(site, plan, shortest=device.name), *_left_out(unknown)),
        mends=()
        if cells is None
        else cell_mends(site, catalogue, cells, now=one, margin=margins.get(shortest)),
    )


def _left_out(unknown: list[str]) -> tuple[str, ...]:
    return (f"left out, since nothing is known of their cells: {', '.join(unknown)}",) if unknown else ()


def _plan_notes(site: Site, plan: VisitPlan, *, shortest: str) -> tuple[str, ...]:
    names = {device.id: device.name for device in site.devices}
    if plan.is_one_visit:
        notes = ["all batteries are changed in one visit, and none needs another"]
    else:
        notes = ["no battery needs a visit of its own: each is changed at one of these visits"]
    notes.append(f"{shortest} decides how far apart they are")
    notes += [
        f"after {visit.year:.3g} years: {', '.join(names[one] for one in visit.devices)}"
        for visit in plan.visits
    ]
    return tuple(notes)
