from common.houses import one_room
from wardwright.questions.what_is_heard import answers, without_mends
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
SITE = read_sample("terrace")


def test_a_bare_house_says_what_it_lacks() -> None:
    (one,) = answers(one_room(), CATALOGUE)
    assert one.verdict == "unknown"
    assert one.reason == (
        "not computable: no sounder, and no control unit whose sheet states the level of its own; "
        "no bed, no bedroom and nobody who is told to sleep anywhere"
    )


def test_every_subject_is_asked_about_once() -> None:
    found = answers(SITE, CATALOGUE)
    subjects = [one.subject_id for one in found]
    assert len(subjects) == len(set(subjects))
    assert {one.question for one in found} == {13}
    assert len(found) == 3 + 1 + 2


def test_in_the_hand_the_numbers_are_the_same_and_no_mend_is_tried() -> None:
    plain = {one.subject_id: one for one in without_mends(SITE, CATALOGUE)}
    for one in answers(SITE, CATALOGUE):
        assert plain[one.subject_id].estimate == one.estimate
        assert plain[one.subject_id].mends == ()
