"""The order of fitting on the screen: stage by stage, each device with its fixing sheet."""

from __future__ import annotations

from collections.abc import Sequence

from wardwright.documents.content.fit_plan_words import fixing_words, stage_words
from wardwright.documents.content.fitting_list import is_contact, mended_first, set_words
from wardwright.documents.content.names import Names, names_of
from wardwright.documents.content.quantities import quantity, sentence
from wardwright.documents.content.schedule import room_name
from wardwright.documents.content.wording import DANGERS
from wardwright.documents.drawing.devices import Tag, device_tags
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import Device, OpeningMount
from wardwright.model.placement import standing
from wardwright.model.record import Record
from wardwright.model.site import Site
from wardwright.questions.fit_plan import FitPlan
from wardwright.rules.finding import Finding
from wardwright.works.fitting_order import FIXES_NOTHING
from wardwright.works.fixing_sheet import FixingSheet

STAYS = "There already, and stays: look that it sits as the plan has it"
BY_RADIO = "joined by radio: paired as its sheet says, hung for a try, and its signal read before any hole"
BY_CABLE = "joined by cable: run first, low voltage apart from mains, slack left, both ends labelled"


class FitLine(Record):
    """One device as it is fitted."""

    device: str
    tag: str
    """Its letters on the plan."""
    name: str
    kind: str
    room: str
    storey: str
    facts: tuple[str, ...]
    """Sentences: where, how it is set and held, how it is joined to the rest, how long it takes."""
    cautions: tuple[str, ...]
    findings: tuple[str, ...]
    """What must be mended about it first: codes and messages."""


class FitStage(Record):
    """Some devices that are worked on together, or something that is done about the whole job."""

    heading: str
    devices: tuple[FitLine, ...]
    """In the order of fitting; empty: nothing is fixed in this stage."""
    is_fitted: bool
    """Whether its devices are fitted now; False: they were there before."""
    named: tuple[str, ...]
    """Names of the devices that the stage is about, and that are fixed in another."""


def fitting_stages(
    plan: FitPlan | None, site: Site, catalogue: Catalogue, *, findings: Sequence[Finding]
) -> tuple[FitStage, ...]:
    """Put the order of fitting into words.

    Parameters
    ----------
    plan : FitPlan or None
        The order and the sheets; None: nothing is to be fitted.
    site : Site
        The design.
    catalogue : Catalogue
        Says what each device is.
    findings : sequence of Finding
        What the rules said: a device with something that must be mended says so.

    Returns
    -------
    tuple of FitStage
        In order; what was there before comes last.
    """
    names, tags = names_of(site, catalogue), device_tags(site, catalogue)
    steps = () if plan is None else plan.steps
    sheets = {} if plan is None else {one.device: one for one in plan.sheets}
    joined = {
        device: told
        for stage, told in (("hang for a try", BY_RADIO), ("cables", BY_CABLE))
        for step in steps
        if step.stage == stage
        for device in step.devices
    }

    def line(device: Device, sheet: FixingSheet | None) -> FitLine:
        told = _told(site, catalogue, device, sheet=sheet, names=names, tag=tags[device.id])
        more = [joined[device.id]] if device.id in joined else []
        if sheet is not None:
            more.append(f"about {quantity(sheet.minutes, 'min', 1.0)} to fit and try")
        return FitLine(
            device=device.id,
            tag=tags[device.id].text,
            name=device.name,
            kind=tags[device.id].words,
            room=room_name(site, device),
            storey=standing(site, device).storey,
            facts=tuple(sentence(one) for one in (*told, *more)),
            cautions=() if sheet is None else tuple(DANGERS[one] for one in sheet.dangers),
            findings=mended_first(findings, device),
        )

    found = [
        FitStage(
            heading=sentence(stage_words(step)).removesuffix("."),
            devices=()
            if step.stage in FIXES_NOTHING
            else tuple(line(site.device(one), sheets[one]) for one in step.devices),
            is_fitted=True,
            named=tuple(names.of(one) for one in step.devices) if step.stage in FIXES_NOTHING else (),
        )
        for step in steps
    ]
    staying = tuple(line(one, None) for one in site.devices if one.id not in sheets)
    return (
        (*found, FitStage(heading=STAYS, devices=staying, is_fitted=False, named=()))
        if staying
        else tuple(found)
    )


def _told(
    site: Site, catalogue: Catalogue, device: Device, *, sheet: FixingSheet | None, names: Names, tag: Tag
) -> tuple[str, ...]:
    fixed = () if sheet is None else fixing_words(sheet, names)
    where: tuple[str, ...] = ()
    if isinstance(device.mount, OpeningMount):
        opening = site.opening(device.mount.opening).name
        where = (f"on {opening}, electronics on the {device.mount.electronics_on}",)
    ways = set_words(site, device, looks=tag.looks, is_contact=is_contact(catalogue, device))
    return (*fixed[:1], *where, *ways, *fixed[1:])
