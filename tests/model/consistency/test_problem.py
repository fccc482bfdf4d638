from common.broken import hut
from wardwright.model.consistency.identity import places
from wardwright.model.consistency.problem import Problem, nearest_space, register
from wardwright.store.catalogue import load_catalogue


def test_a_problem_stops_unless_it_says_otherwise() -> None:
    assert Problem("what", "where", "cure").weight == "stops"


def test_without_a_catalogue_no_sheet_is_known() -> None:
    site = hut()
    assert register(site, None).sheet_of(site.devices[0]) is None
    sheet = register(site, load_catalogue()).sheet_of(site.devices[0])
    assert sheet is not None
    assert sheet.kind == "control-unit"


def test_the_nearest_space_of_a_storey() -> None:
    book = register(hut(), None)
    space, far = nearest_space(book, "ground", (7.0, 2.0))
    assert space is not None
    assert (space.id, far) == ("kitchen", 1.0)
    assert nearest_space(book, "cellar", (0.0, 0.0)) == (None, float("inf"))


def test_an_entry_is_named_in_full() -> None:
    place = next(places(hut(), "openings"))
    problem = place.dangling("wall", kind="wall", wanted="soth", known=["south", "north"])
    assert problem.where == 'openings[0] "front door" (front-door)'
    assert problem.what == "'wall' names the wall 'soth', which does not exist; did you mean 'south'"
    assert problem.subject == "front-door"
