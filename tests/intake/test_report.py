from __future__ import annotations

from wardwright.intake.report import ReportDraft


def test_facts_are_grouped_with_their_ids() -> None:
    draft = ReportDraft()
    for window in ("w2", "w1", "w3"):
        draft.guess("sill height", "window", window)
    draft.leave_out("wall", "between 5.7 and 6.0 m", "box")
    report = draft.report(source="a.ifc", form="IFC4", counts=(("walls", 2),))
    assert report.guessed == ("sill height guessed on 3 windows: w1, w2, w3",)
    assert report.left_out == ("1 wall between 5.7 and 6.0 m: box",)
    assert draft.guesses() == 3


def test_facts_guessed_on_the_same_things_are_said_once() -> None:
    draft = ReportDraft()
    for fact in ("swing", "hinge", "leaves"):
        draft.guess(fact, "window", "w1")
    draft.guess("hinge", "door", "w1")
    assert draft.report(source="a", form="IFC4", counts=()).guessed == (
        "hinge guessed on 1 door: w1",
        "hinge, leaves and swing guessed on 1 window: w1",
    )


def test_one_thing_guessed_twice_is_one_guess() -> None:
    draft = ReportDraft()
    draft.guess("use", "space", "hall")
    draft.guess("use", "space", "hall")
    assert draft.guesses() == 1


def test_long_lists_say_how_many_more() -> None:
    draft = ReportDraft()
    for number in range(12):
        draft.guess("lock", "door", f"d{number:02}")
    (fact,) = draft.report(source="a", form="IFC4", counts=()).guessed
    assert fact.startswith("lock guessed on 12 doors: d00, ")
    assert fact.endswith("d07 and 4 more")


def test_order_of_notes_does_not_change_the_report() -> None:
    reports = []
    for order in (("a", "b"), ("b", "a")):
        draft = ReportDraft()
        for name in order:
            draft.guess("lock", "door", name)
            draft.leave_out("wall", name, name)
        reports.append(draft.report(source="a", form="IFC4", counts=()))
    assert reports[0] == reports[1]
