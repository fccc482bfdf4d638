import pytest

from wardwright.physics.detection.noticed import Noticing, SeenFacts, Watch


@pytest.mark.parametrize("record", [Noticing, SeenFacts, Watch])
def test_records_say_what_each_field_is(record: type) -> None:
    assert record.__doc__
    assert len(record._fields) == len(set(record._fields))  # type: ignore[attr-defined] # a NamedTuple has them


def test_distances_have_their_unit_in_the_name() -> None:
    assert Noticing._fields == ("entered_m", "noticed_m")
