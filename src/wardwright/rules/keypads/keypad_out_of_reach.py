"""KEY102: a keypad that is too high or too low for a hand."""

from __future__ import annotations

from collections.abc import Iterator

from wardwright.model.catalogue import Catalogue
from wardwright.model.placement import standing
from wardwright.model.site import Site
from wardwright.model.sketch import Sketch
from wardwright.rules.entry_routes import keypads
from wardwright.rules.finding import Finding, Mend
from wardwright.rules.hand_heights import best_height, of_limits, of_people, of_sheet
from wardwright.rules.registry import exactly, rule


@rule(
    code="KEY102",
    name="keypad-out-of-reach",
    since="0.1",
    stage="trial use",
    mark="published",
    severity="advise",
    sources=("approved-document-m", "ada-2010"),
)
def keypad_out_of_reach(site: Site, catalogue: Catalogue) -> Iterator[Finding]:
    """Keypads higher or lower than their sheet says, the people reach, or public guidance says.

    What it checks
        The height of the middle of each keypad, or of a control unit with one built in: against its own sheet; then
        against what everybody of the household reaches, children apart; then against the published heights of
        switches (0.45 to 1.2 m in England, 0.38 to 1.22 m in the United States). The English figures are for new
        dwellings, and ask buttons at 1.2 m or less but a display at 1.2 m or more.
    Why it matters
        Whoever does not reach it with ease, with bags, from a chair or with stiff shoulders, stops setting the
        alarm or lets it ring.
    How to put it right
        Move it straight up or down to the height given, which suits all three where they can be had together.
    What it cannot know
        Who sits in a wheelchair or has one hand free; glasses that are put on to read the display.

    Parameters
    ----------
    site : Site
        The house, its people and devices.
    catalogue : Catalogue
        The devices' sheets, what people reach, published heights.

    Yields
    ------
    Finding
        One for each keypad outside one of them, by the gravest, with its height and the height to choose [m].

    Raises
    ------
    NoneOfAKind
        If there is no keypad.
    """
    this = keypad_out_of_reach
    pack = site.place.rule_pack
    published = of_limits(
        catalogue.limit("control-height-least", pack), catalogue.limit("control-height-most", pack)
    )
    people = of_people(site, catalogue)
    for keypad in keypads(site, catalogue):
        place = standing(site, keypad)
        spans = (*of_sheet(catalogue.sheet(keypad.sheet).button), *people, *published)
        missed = [span for span in spans if not span.holds(place.height_m)]
        if not missed:
            continue
        best = best_height(spans, place.height_m)
        first = missed[0]
        side = "higher" if place.height_m > first.high_m else "lower"
        mends = (Mend(action="move-device", subject=keypad.id, values=(("height_m", best),)),)
        is_cured = all(span.holds(best) for span in missed)
        yield this.finding(
            keypad.id,
            f"{keypad.name}: it is {side} than {first.words}",
            cure="Move it straight up or down to the height given"
            if is_cured
            else "Give some of them a keyfob: no height suits all",
            severity=first.severity,
            estimate=exactly(place.height_m, "m", keypad.basis_of("mount")),
            limit=best if is_cured else None,
            mends=mends if is_cured else (),
            sketches=(
                Sketch(
                    role="fault", storey=place.storey, points=((place.x_m, place.y_m),), label=keypad.name
                ),
            ),
        )
