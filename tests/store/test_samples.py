import pytest

from wardwright.errors import DocumentError
from wardwright.model.document import read_document, write_document
from wardwright.model.validation import problems
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample, sample_names


@pytest.mark.parametrize("name", sample_names())
def test_every_sample_reads_and_holds_together(name: str) -> None:
    site = read_sample(name)
    assert [problem for problem in problems(site, load_catalogue()) if problem.weight == "stops"] == []
    assert read_document(write_document(site), where=name) == site


def test_an_unknown_sample_is_said() -> None:
    with pytest.raises(DocumentError, match="there is no sample 'castle'"):
        read_sample("castle")
