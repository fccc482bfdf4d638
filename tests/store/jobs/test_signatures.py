from __future__ import annotations

from pathlib import Path

import pytest

from common.houses import one_room
from wardwright.errors import JobError
from wardwright.model.catalogue import Catalogue
from wardwright.store.catalogue import load_catalogue
from wardwright.store.jobs.opening import new_job, open_job
from wardwright.store.jobs.signatures import ToSign, digest_of, rows_signed, sign, signed, signed_at

ANSWERS = ({"question": 1, "value": 3.5},)
TO_SIGN = ToSign(1, "0.1.0", "uk-eu", "abc", ANSWERS, ({"code": "X1"},))


def test_answers_are_kept_as_signed_with_what_they_stand_on(tmp_path: Path) -> None:
    with new_job(tmp_path / "a.job", one_room(), author="me") as job:
        number = sign(job, TO_SIGN, author="Fitter", what="the design")
    with open_job(tmp_path / "a.job") as job:
        (one,) = signed(job)
        assert one == signed_at(job, number)
        assert (one.author, one.what, one.answers, one.findings) == (
            "Fitter",
            "the design",
            ANSWERS,
            ({"code": "X1"},),
        )
        assert (one.revision, one.program, one.rule_pack, one.catalogue) == (1, "0.1.0", "uk-eu", "abc")
        with pytest.raises(JobError, match="nothing was signed under number 7"):
            signed_at(job, 7)


@pytest.mark.parametrize(
    ("author", "what", "said"),
    [
        (" ", "", "nobody signs"),
        ("x" * 61, "", "name is too long"),
        ("Fitter", "a\nb", "text is too long, or holds a sign"),
        ("Fitter", "keypad PIN 4711", "text looks as if it held a code"),
        ("Fitter code 4711", "", "name looks as if it held a code"),
    ],
)
def test_a_name_that_cannot_stand_there_is_refused(tmp_path: Path, author: str, what: str, said: str) -> None:
    with new_job(tmp_path / "a.job", one_room(), author="me") as job:
        with pytest.raises(JobError, match=said):
            sign(job, TO_SIGN, author=author, what=what)
        assert signed(job) == ()


def test_the_digest_tells_other_rows_of_data() -> None:
    catalogue = load_catalogue()
    assert digest_of(catalogue) == digest_of(Catalogue.model_validate(catalogue.model_dump()))
    assert digest_of(catalogue) != digest_of(catalogue.model_copy(update={"locks": ()}))


def test_the_rows_of_data_are_kept_once_with_what_was_signed(tmp_path: Path) -> None:
    to_sign = TO_SIGN._replace(rows='{"figures": [{"id": "pace"}]}')
    with new_job(tmp_path / "a.job", one_room(), author="me") as job:
        sign(job, to_sign, author="Fitter")
        sign(job, to_sign, author="Fitter")
        assert rows_signed(job, "abc") == {"figures": [{"id": "pace"}]}
        assert rows_signed(job, "another") == {}
        (count,) = job.base.execute("SELECT count(*) FROM data_rows").fetchone()
    assert count == 1
