import pytest

from wardwright.errors import CatalogueError
from wardwright.model.catalogue import Catalogue
from wardwright.store.catalogue import load_catalogue
from wardwright.trials.paces import paces_of, walking_pace


def test_a_hurried_intruder_goes_at_the_figures_likely_values() -> None:
    catalogue = load_catalogue()
    paces = paces_of(catalogue)
    assert paces.pace == catalogue.figure("pace-hurried").value
    assert paces.stairs_share == catalogue.figure("stairs-share").value
    assert paces.pass_door == catalogue.figure("pass-door").value


def test_the_household_walks_at_the_pace_of_its_word() -> None:
    catalogue = load_catalogue()
    paces = [walking_pace(catalogue, word).value for word in ("slow", "usual", "quick")]
    assert paces == sorted(paces)
    assert walking_pace(catalogue, "slow") == catalogue.figure("pace-slow")


def test_a_catalogue_without_walkers_says_what_to_add() -> None:
    with pytest.raises(CatalogueError, match="no walker 'slow'"):
        walking_pace(Catalogue(), "slow")
