"""The walk-test plan in words: each stop of the round, and each walk past a movement detector."""

from __future__ import annotations

from wardwright.documents.content.names import Names
from wardwright.documents.content.paper import Cell, Column, Table
from wardwright.documents.content.quantities import quantity
from wardwright.documents.content.results_told import told_result
from wardwright.documents.content.round_told import NO_WAY, TESTS, plan_names
from wardwright.documents.content.schedule import NONE
from wardwright.model.catalogue import Catalogue
from wardwright.model.site import Site
from wardwright.questions.between_states import DueTest
from wardwright.questions.proving_plan import ProvingPlan
from wardwright.questions.walk_past import Expected, Manner, WalkTest
from wardwright.works.site_result import SiteResult

MANNERS: dict[Manner, str] = {
    "across, far": "across, at its far edge",
    "across, near": "across, nearer by",
    "toward": "toward it",
    "in by": "in by {of}, open",
    "beyond": "beyond the open door, in {of}",
    "outside the door": "outside {of}, open",
    "past the pane": "past {of}, outside",
}
EXPECTED: dict[Expected, str] = {
    "notices": "it notices",
    "may notice": "it may notice",
    "stays quiet": "it stays quiet",
}
NOT_WANTED = {
    "notices": "not wanted there: turn it, screen it, or have it agreed",
    "may notice": "not sure there: see which, and write it down",
    "stays quiet": "",
}
COLUMNS = (
    Column("Stop"), Column("Storey"), Column("Walk there", "s"), Column("Test", share=1.2), Column("Of", share=2.0),
    Column("What to do", share=3.0), Column("Pace", "m/s"), Column("From x", "m"), Column("From y", "m"),
    Column("To x", "m"), Column("To y", "m"), Column("Length", "m"), Column("Wait before", "s"),
    Column("Expected", share=2.0), Column("Read", share=1.4), Column("By", share=1.0), Column("Date", share=1.0),
)  # fmt: skip
WALK_PARTS = 3
"""Of a key: how it is walked, by what, and how fast. [-]"""
HOW_TO_WALK = (
    "Test mode on, three minutes after switching on. Let each detector be alone for its waiting time before each "
    "walk. Doors open where a walk goes by one, all others as the household leaves them. Write down what was read, "
    "not a tick: it is what next year is held against. Crawling and very slow movement may pass any movement "
    "detector unnoticed."
)


def walk_words(walk: WalkTest, names: Names) -> str:
    """One walk as a sentence without a full stop.

    Parameters
    ----------
    walk : WalkTest
        As data.
    names : Names
        What people call things.

    Returns
    -------
    str
        How, from where to where on the plan, at which pace, and what is expected.
    """
    of = names.of(walk.subject) if walk.subject else ""
    (x0, y0), (x1, y1) = walk.from_m, walk.to_m
    place = f"from x {x0:.1f}, y {y0:.1f} to x {x1:.1f}, y {y1:.1f} on the plan"
    pace = f"{walk.pace} ({quantity(walk.pace_m_s, 'm/s', 0.1, is_plain=True)})"
    return f"{MANNERS[walk.manner].format(of=of)}, {place}, {pace}: {expected_words(walk)}"


def expected_words(walk: WalkTest) -> str:
    """What a walk is to show, and what it means where that is not wanted."""
    told = EXPECTED[walk.expected]
    if walk.within_m is not None:
        told += f" within {quantity(walk.within_m, 'm', 0.1, is_plain=True)}"
    more = "" if walk.is_wanted else NOT_WANTED[walk.expected]
    return f"{told}; {more}" if more else told


def proving_plan_table(
    plan: ProvingPlan, site: Site, catalogue: Catalogue, *, results: tuple[SiteResult, ...] = ()
) -> Table:
    """One row a test, and one a walk, in walking order, with what was read or room for it."""
    written = {one.key: one for one in results if one.step == "prove"}
    names = plan_names(site, catalogue)
    rows: list[tuple[Cell, ...]] = []
    for number, stop in enumerate(plan.round.stops, 1):
        where = names.of(stop.storey) if stop.storey else NONE
        way: Cell = NO_WAY if stop.walk_s is None else round(stop.walk_s, 1)
        for test in stop.tests:
            head = (number, where, way, test.kind, names.of(test.about))
            walks = walks_of(plan, test.about, is_view=test.kind == "view") if "view" in test.kind else ()
            rows += [
                (
                    *head,
                    MANNERS[one.manner].format(of=names.of(one.subject) if one.subject else ""),
                    one.pace_m_s,
                    *(round(value, 2) for value in (*one.from_m, *one.to_m, one.length_m)),
                    one.wait_s,
                    expected_words(one),
                    *_read(written.get(key_of_walk(test, one))),
                )
                for one in walks
            ]
            if not walks:
                what = TESTS[test.kind].format(of=names.of(test.about))
                rows.append(
                    (*head, what, *(NONE,) * 7, "as what to do says", *_read(written.get(key_of_test(test))))
                )
    return Table("Tests", COLUMNS, tuple(rows))


def _read(result: SiteResult | None) -> tuple[str, str, str]:
    """What was read, by whom and on which day; empty: nothing was written down."""
    return ("", "", "") if result is None else (told_result(result), result.author, result.at[:10])


def key_of_test(test: DueTest) -> str:
    """What a test is known by."""
    return f"{test.kind}/{test.about}"


def key_of_walk(test: DueTest, walk: WalkTest) -> str:
    """What one walk of a test is known by."""
    return f"{key_of_test(test)}/{walk.manner}/{walk.subject}/{walk.pace}"


def walk_named(key: str, names: Names) -> str:
    """Which walk of a test a key means, in words; empty: it means the whole test."""
    parts = key.split("/")[2:]
    manner = next((one for one in MANNERS if parts[:1] == [one]), None)
    if manner is None or len(parts) != WALK_PARTS:
        return ""
    return f"{MANNERS[manner].format(of=names.of(parts[1]) if parts[1] else '')}, {parts[2]}"


def walks_of(plan: ProvingPlan, device: str, *, is_view: bool) -> tuple[WalkTest, ...]:
    """The walks past one detector where it is to notice, or those where it is to stay quiet."""
    beyond = ("beyond", "outside the door", "past the pane")
    return tuple(one for one in plan.walks if one.device == device and (one.manner not in beyond) == is_view)
