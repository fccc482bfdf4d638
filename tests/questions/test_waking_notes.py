from common.houses import person
from wardwright.questions.waking_notes import no_promise, who_sleeps_on
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()


def test_the_figure_is_borrowed_and_promises_nothing() -> None:
    words = no_promise(CATALOGUE, CATALOGUE.limit("pillow-level", "us"))
    assert words.startswith("75 dBA is borrowed from fire practice (NFPA 72")
    assert words.endswith("no promise of waking")


def test_who_sleeps_on_is_flagged_by_what_was_told() -> None:
    people = (
        person("Gran", hears_badly=True),
        person("Tom", is_child=True),
        person("Dad", sleeps_heavily=True),
        person("Ann"),
    )
    notes = who_sleeps_on(CATALOGUE, people)
    assert notes[0] == "Gran hears badly: in trials a high tone woke 56% of such sleepers"
    assert notes[1] == "Tom is a child: in trials a high tone woke 56% of such sleepers"
    assert notes[2].startswith("Dad sleeps heavily")
    assert notes[3:] == ("drink and some medicines make anybody harder to wake",)
    assert "low tone woke 92%" in who_sleeps_on(CATALOGUE, people, is_low_tone=True)[0]
