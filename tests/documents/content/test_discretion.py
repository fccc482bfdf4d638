from __future__ import annotations

from wardwright.documents.content.as_fitted import ELSEWHERE, as_fitted_table
from wardwright.documents.content.discretion import NO_NAME, discreet, discreet_name, withheld
from wardwright.documents.content.label_list import label_table
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()


def test_the_control_unit_and_the_message_path_are_withheld() -> None:
    site = read_sample("terrace")
    assert withheld(site, CATALOGUE) == {"hall-control-unit"}


def test_a_name_that_tells_of_the_control_unit_is_not_told() -> None:
    site = read_sample("terrace")
    assert discreet("Hall movement", site, CATALOGUE) == "Hall movement"
    assert discreet("Control unit cupboard", site, CATALOGUE) == NO_NAME
    assert discreet("by Ground hall control unit", site, CATALOGUE) == NO_NAME


def test_a_device_whose_place_or_name_tells_too_much_is_called_by_its_kind() -> None:
    site = read_sample("terrace")
    unit, other = site.device("hall-control-unit"), site.device("hall-movement")
    assert discreet_name(unit, site, CATALOGUE) == "control unit"
    assert discreet_name(other, site, CATALOGUE) == other.name
    telling = other.model_copy(update={"name": "By the control unit"})
    assert discreet_name(telling, site, CATALOGUE) == "movement detector"


def test_no_copy_but_the_fitters_tells_where_a_keyfob_lies_or_whose_it_is() -> None:
    site = read_sample("bungalow")
    assert "first-keyfob" in withheld(site, CATALOGUE)
    rows = [row for row in as_fitted_table(site, CATALOGUE).rows if "keyfob" in row]
    assert [row[:3] for row in rows] == [(ELSEWHERE, "keyfob", "keyfob")]
    assert not any("First keyfob" in row for row in label_table(site, CATALOGUE).rows)
