from __future__ import annotations

from wardwright.documents.content.discretion import NO_NAME, discreet, withheld
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
