from __future__ import annotations

from wardwright.documents.content.names import names_of
from wardwright.documents.content.results_told import Results, told_elsewhere, told_result
from wardwright.store.samples import read_sample
from wardwright.works.site_result import SiteResult


def result(key: str, outcome: str = "passed", **more: str) -> SiteResult:
    given = {
        "number": 1,
        "step": "prove",
        "reading": "",
        "remark": "",
        "revision": 1,
        "author": "me",
        "at": "",
        "earlier": "",
    }
    return SiteResult.model_validate({**given, "key": key, "outcome": outcome, **more})


READ = Results(
    (
        result("radio/a", reading="-62 dBm"),
        result("radio/b", "not done", reading="-80 dBm"),
        result("sound/bed", "not passed", reading="68 dBA", remark="door shut"),
        result("view/a/toward//usual"),
        result("view/a/in by/door/usual", "not passed", remark="asleep"),
        result("view/c/toward//usual", earlier="it was moved or turned"),
        result("radio/c", reading="-60 dBm", earlier="it was moved or turned"),
        result("a", "done", step="fit"),
    ),
    walk_named=lambda key: key,
)


def test_a_result_says_what_came_of_it_what_was_read_and_what_was_said() -> None:
    assert told_result(result("x", "not passed", reading="5 s", remark="late")) == "not passed; 5 s; late"
    assert told_result(result("x", earlier="it is new")) == "passed; of an earlier revision: it is new"
    assert READ.told("radio", "a") == "passed; -62 dBm"
    assert READ.told("radio", "nobody") == ""


def test_a_reading_stands_in_a_cell_of_its_own_only_where_it_holds_and_was_done() -> None:
    assert READ.both("sound", "bed") == ("68 dBA", "not passed; door shut")
    assert READ.both("radio", "b") == ("", "not done; -80 dBm")
    assert READ.reading("radio", "c") == ""
    assert "of an earlier revision" in READ.told("radio", "c")


def test_all_that_is_shown_of_a_device_is_counted_and_what_did_not_pass_is_named() -> None:
    assert READ.of_device("a") == "Of 2 written down 1 passed. View/a/in by/door/usual: not passed; asleep."
    assert READ.of_device("c").endswith("passed; of an earlier revision: it was moved or turned.")
    assert Results((result("opening/d"),)).of_device("d") == "Passed."
    assert READ.of_device("nobody") == ""


def test_what_is_not_done_or_of_an_earlier_revision_is_not_counted_as_passed() -> None:
    (told,) = READ.counted()
    assert told.startswith(
        "Written down on site: 2 passed, 2 not passed, 1 not done, 2 of an earlier revision"
    )
    assert Results().counted() == ()


def test_what_has_no_row_in_the_test_record_is_told_by_itself() -> None:
    names = names_of(read_sample("terrace"))
    some = (
        result("hall-keypad", "done", step="fit", remark="2 cm lower"),
        result("hall-movement", "done", step="fit"),
        result("hall-control-unit", "not done", step="fit", remark="no socket yet"),
        result("message/hall-control-unit", "not passed", remark="mobile alone"),
        result("radio/hall-keypad"),
    )
    assert told_elsewhere(some, names) == (
        "Ground hall keypad: fitted; 2 cm lower.",
        "Ground hall control unit: not done; no socket yet.",
        "Ground hall control unit, each kind of message by each path: not passed; mobile alone.",
    )
