from __future__ import annotations

from common.fitted import fitted
from wardwright.documents.content.forms.timed_readings import answers_of, entry_table, nights_table
from wardwright.documents.content.results_told import Results
from wardwright.questions.table import ask
from wardwright.store.catalogue import load_catalogue
from wardwright.works.site_result import SiteResult

SITE = fitted()
ANSWERS = ask(SITE, load_catalogue(), (3, 8))
DOOR = next(one for one in answers_of(ANSWERS, 3) if one.parts)


def result(key: str, **more: str) -> SiteResult:
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
    return SiteResult.model_validate({**given, "key": key, "outcome": "passed", **more})


def test_what_was_read_coming_in_stands_by_the_slowest_alone() -> None:
    read = Results((result(f"entry/{DOOR.subject_id}", reading="19 s", remark="with bags"),))
    rows = [row for row in entry_table(SITE, ANSWERS, read).rows if row[-2]]
    times = {
        part.name: part.estimate.value
        for part in DOOR.parts
        if part.name.endswith("coming in") and part.estimate is not None
    }
    slowest = {name for name, value in times.items() if value == max(times.values())}
    assert {str(row[1]) for row in rows} == slowest
    assert rows[0][-2:] == ("19 s", "passed; with bags")


def test_without_results_all_is_left_to_be_filled_in() -> None:
    assert all(row[-2:] == ("", "") for row in entry_table(SITE, ANSWERS, Results()).rows)
    assert all(row[-1] == "" for row in nights_table(ANSWERS, Results()).rows)


def test_a_trip_at_night_says_what_came_of_it() -> None:
    nights = answers_of(ANSWERS, 8)
    if not nights:
        assert "not worked out here" in str(nights_table(ANSWERS, Results()).rows[0])
        return
    read = Results((result(f"night trip/{nights[0].subject_id}", remark="silent"),))
    assert nights_table(ANSWERS, read).rows[0][-1] == "passed; silent"
