"""SND103: a house with one sounder only."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.kit import some_of
from wardwright.rules.registry import rule
from wardwright.rules.sounder_spots import USUAL_HEIGHT_M, sounder_spot
from wardwright.rules.suggestion import suggestions


@rule(
    code="SND103",
    name="one-sounder-only",
    since="0.1",
    stage="trial use",
    mark="common practice",
    severity="advise",
    sources=("own", "en-50131-1"),
)
def one_sounder_only(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Houses with one sounder, whose loss silences the alarm.

    What it checks
        How many separate sounders there are; one that is built into the control unit does not count, since it falls
        with it. A single one that does not sound by itself is also less than EN 50131-1 lets a system without a
        second have, from memory: check that with the standard.
    Why it matters
        One sounder is one thing to break. Outside it is not loud enough to drive anybody out; inside nobody in the
        street hears it.
    How to put it right
        Add one inside, out of quick reach, or one outside that sounds by itself. The finding carries a place for
        one inside where the single one hangs outside.
    What it cannot know
        Sounders of smoke alarms that the unit can ring; who is near enough to hear it.

    Parameters
    ----------
    site : Site
        The house and its devices.
    catalogue : Catalogue
        The devices' sheets.

    Yields
    ------
    Finding
        One for the sounder that is alone: `check with the standard` where it does not sound by itself, else `advise`.

    Raises
    ------
    NoneOfAKind
        If there is no sounder.
    """
    this = one_sounder_only
    every = some_of(site, catalogue, "sounder", cure="Add the sounders that are planned")
    if len(every) > 1:
        return
    sounder, sheet = every[0]
    place = standing(site, sounder)
    is_self_powered = sheet.sounder is not None and sheet.sounder.is_self_powered
    mends = _added(site, catalogue)
    new = suggestions(site, tuple(mend.model_copy(update={"action": "move-device"}) for mend in mends))
    yield this.finding(
        sounder.id,
        f"{sounder.name}: it is the only sounder"
        + ("" if is_self_powered else ", and does not sound by itself when it loses the unit"),
        cure=f"Add one at the place given, in {new[0].label}" if new else "Add another, out of quick reach",
        severity=None if is_self_powered else "check with the standard",
        mends=mends,
        sketches=(
            Sketch(role="fault", storey=place.storey, points=((place.x_m, place.y_m),), label=sounder.name),
            *new,
        ),
    )


def _added(site: Site, catalogue: Catalogue) -> tuple[Mend, ...]:
    """An inside sounder out of quick reach."""
    (sounder, _), *_ = some_of(site, catalogue, "sounder")
    rows = [row for row in catalogue.sheets if row.kind == "sounder" and not row.is_outside]
    spot = sounder_spot(site, catalogue, near=standing(site, sounder), height_m=USUAL_HEIGHT_M)
    if not rows or spot is None:
        return ()
    best = min(rows, key=lambda row: row.cheapest_first)
    values = (("sheet", best.id), *spot.values(USUAL_HEIGHT_M))
    return (Mend(action="add-device", subject=spot.space, values=values),)
