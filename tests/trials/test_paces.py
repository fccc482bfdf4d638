from wardwright.store.catalogue import load_catalogue
from wardwright.trials.paces import paces_of


def test_a_hurried_intruder_goes_at_the_figures_likely_values() -> None:
    catalogue = load_catalogue()
    paces = paces_of(catalogue)
    assert paces.pace == catalogue.figure("pace-hurried").value
    assert paces.stairs_share == catalogue.figure("stairs-share").value
    assert paces.pass_door == catalogue.figure("pass-door").value
