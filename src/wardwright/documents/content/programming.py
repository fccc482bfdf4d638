"""The programming sheet: all that is keyed in at the control unit, in the order in which it is asked for."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date

from wardwright.documents.content.paper import NOT_KNOWN, Cell, Column, Paper, Section, Table
from wardwright.documents.content.quantities import joined
from wardwright.documents.content.schedule import NONE, NOT_DECIDED, yes_or_no
from wardwright.model.catalogue import Catalogue
from wardwright.model.programme import Behaviour, SetState, Zone
from wardwright.model.site import Site
from wardwright.rules.zone_names import display_length, shown_name
from wardwright.trials.responses import ResponseRow, response_table

STATES: tuple[SetState, ...] = ("unset", "part set", "set")
SOUNDERS: dict[str, str] = {"none": "silent", "inside": "inside", "all": "all"}

HOW_TO_USE = (
    "Key in from the top and tick each row. Set the user codes with the customer: never write one here, nor on "
    "anything that stays with this sheet."
)


def programming_sheet(site: Site, catalogue: Catalogue, *, drawn_up: date) -> Paper:
    """Put the whole programme into a sheet to key in from.

    Parameters
    ----------
    site : Site
        Its zones, parts, behaviours and programme.
    catalogue : Catalogue
        Says how long a name the display shows.
    drawn_up : date
        The day the paper is made.

    Returns
    -------
    Paper
        Zones first, then how they behave, times, and what follows each signal.
    """
    length = display_length(site, catalogue)
    told = f"names are cut to {length} letters" if length is not None else "names are whole"
    reason = "" if length is not None else "; how many letters the display has is not known"
    sections = (
        Section(
            "Zones", text=(f"As the display shows them: {told}{reason}.",), table=_zones(site, length=length)
        ),
        Section("Behaviours that these zones have", table=_behaviours(site)),
        Section("Times and settings", table=_times(site)),
        Section("What follows each signal", table=_responses(site)),
        Section("Keyed in", blanks=("By", "Date", "Software of the control unit", "Not as on this sheet")),
    )
    return Paper(
        title="Programming sheet",
        house=site.name,
        copy="fitter",
        drawn_up=drawn_up,
        sections=sections,
        is_landscape=True,
        foot=HOW_TO_USE,
    )


def _zones(site: Site, *, length: int | None) -> Table:
    columns = (
        Column("Zone", share=0.7), Column("Name on the display", share=2.4), Column("Behaviour", share=1.4),
        Column("Parts", share=2.2), Column("Sounders", share=2.0), Column("Told", share=2.0),
        Column("Confirmation group", share=1.2), Column("Soak", share=0.7), Column("Limit", "alarms", share=0.9),
        Column("Inhibit", share=0.8),
    )  # fmt: skip
    parts = {part.id: part.name for part in site.parts}
    table = response_table(site.programme)
    rows: list[tuple[Cell, ...]] = []
    for zone in sorted(site.zones, key=lambda one: one.number):
        behaviour = site.behaviour(zone.behaviour)
        states = _states(behaviour)
        answers = [row for row in table if row.signal == behaviour.signal and row.state in states]
        is_logged = zone.is_on_soak or not behaviour.alarms
        rows.append(
            (
                zone.number,
                shown_name(zone.name, length),
                _behaviour_words(site, zone),
                "always" if behaviour.is_always_active else ", ".join(parts.get(p, p) for p in zone.parts),
                "log only" if is_logged else _by_state(answers, lambda row: SOUNDERS[row.sounders]),
                "log only" if is_logged else _by_state(answers, lambda row: joined(row.told) or "nobody"),
                zone.group or NONE,
                yes_or_no(is_so=zone.is_on_soak),
                zone.limit or "no limit",
                yes_or_no(is_so=behaviour.may_be_inhibited),
            )
        )
    return Table("Zones", columns, tuple(rows), is_ticked=True)


def _behaviour_words(site: Site, zone: Zone) -> str:
    """How a zone behaves; where it does otherwise when a part is set, both."""
    always = site.behaviour(zone.behaviour).name
    if zone.behaviour_part_set in (None, zone.behaviour):
        return always
    return f"{always}; part set: {site.behaviour(zone.behaviour_part_set or zone.behaviour).name}"


def _states(behaviour: Behaviour) -> tuple[SetState, ...]:
    """The states in which a zone of this behaviour is heard."""
    return STATES if behaviour.is_always_active else STATES[1:]


def _by_state(answers: list[ResponseRow], words_of: Callable[[ResponseRow], str]) -> str:
    """What follows, once where it is the same in every state."""
    found = [(row.state, words_of(row)) for row in answers]
    if len({words for _, words in found}) == 1:
        return found[0][1]
    return "; ".join(f"{state}: {words}" for state, words in found)


def _behaviours(site: Site) -> Table:
    columns = (
        Column("Behaviour", share=1.6), Column("Starts the entry time", share=1.2),
        Column("Allowed after entry has started", share=1.4), Column("Alarms", share=1.2), Column("Heard", share=1.2),
        Column("Abort delay before its message", share=1.4), Column("Signal"), Column("May be inhibited"),
    )  # fmt: skip
    used = {one for zone in site.zones for one in (zone.behaviour, zone.behaviour_part_set)}
    rows: tuple[tuple[Cell, ...], ...] = tuple(
        (
            one.name,
            yes_or_no(is_so=one.starts_entry),
            yes_or_no(is_so=one.allowed_after_entry),
            "yes" if one.alarms else "no: log only",
            "always" if one.is_always_active else "when its part is set",
            yes_or_no(is_so=one.delays_message),
            one.signal,
            yes_or_no(is_so=one.may_be_inhibited),
        )
        for one in site.behaviours
        if one.id in used
    )
    return Table("Behaviours", columns, rows, is_ticked=True)


def _times(site: Site) -> Table:
    one = site.programme
    rows: tuple[tuple[Cell, ...], ...] = (
        ("Entry time", one.entry_time_s, "s", one.basis_of("entry_time_s")),
        ("Exit time", one.exit_time_s, "s", one.basis_of("exit_time_s")),
        ("Abort delay", one.abort_delay_s, "s", one.basis_of("abort_delay_s")),
        ("Sounders go on for", one.sounding_time_s, "s", one.basis_of("sounding_time_s")),
        (
            "A device counts as lost after",
            NOT_DECIDED if one.check_in_min is None else one.check_in_min,
            "" if one.check_in_min is None else "min",
            one.basis_of("check_in_min"),
        ),
        (
            "With something open, setting",
            "is refused" if one.if_open_when_setting == "refuse" else "inhibits the zone",
            "",
            one.basis_of("if_open_when_setting"),
        ),
        (
            "Left and right in names",
            f"as seen from {one.left_and_right_from}, facing the opening",
            "",
            one.basis_of("left_and_right_from"),
        ),
        ("Messages go to", joined(one.told) or NOT_KNOWN, "", one.basis_of("told")),
    )
    columns = (
        Column("Setting", share=2.0),
        Column("Value", share=2.4),
        Column("Unit", share=0.6),
        Column("Known"),
    )
    return Table("Times", columns, rows, is_ticked=True)


def _responses(site: Site) -> Table:
    columns = (
        Column("Signal"), Column("When", share=1.0), Column("Sounders"), Column("Message"), Column("Told", share=2.0),
        Column("As usual"),
    )  # fmt: skip
    rows: tuple[tuple[Cell, ...], ...] = tuple(
        (
            row.signal,
            row.state,
            SOUNDERS[row.sounders],
            yes_or_no(is_so=row.message),
            joined(row.told) or "nobody",
            "yes" if row.is_usual else "no: decided for this site",
        )
        for row in response_table(site.programme)
    )
    return Table("Responses", columns, rows, is_ticked=True)
