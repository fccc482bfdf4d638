import numpy as np
import pytest

from wardwright.physics.sound.transmission import mass_law_loss, massive_loss
from wardwright.store.catalogue import load_catalogue

CATALOGUE = load_catalogue()
NO_LAYERS = {"unknown"}
BANDS = (125.0, 250.0, 500.0, 1000.0, 2000.0, 4000.0)


def loss(row_id: str) -> tuple[float, ...]:
    return next(row.loss_db for row in CATALOGUE.transmissions if row.id == row_id)


def test_every_construction_and_glazing_has_one_row_of_transmission() -> None:
    made = [one for row in CATALOGUE.transmissions for one in row.constructions]
    panes = [one for row in CATALOGUE.transmissions for one in row.glazings]
    assert sorted(made) == sorted({row.id for row in CATALOGUE.constructions} - NO_LAYERS)
    assert sorted(panes) == sorted(row.id for row in CATALOGUE.glazings)


def test_derived_rows_are_what_their_comments_say() -> None:
    assert loss("stone-wall") == pytest.approx(massive_loss(0.5 * 2400.0), abs=0.1)
    assert loss("steel-sheet") == pytest.approx(mass_law_loss(BANDS, 9.4), abs=0.1)
    assert loss("boards") == pytest.approx(mass_law_loss(BANDS, 10.0), abs=0.1)
    assert np.subtract(loss("brick-100"), loss("light-block")) == pytest.approx(np.full(6, 5.0))


def test_shares_of_a_spectrum_are_all_of_it() -> None:
    for row in CATALOGUE.spectrums:
        assert sum(row.shares) == pytest.approx(1.0)


def test_every_surface_has_a_usual_row() -> None:
    usual = {row.of for row in CATALOGUE.absorptions if not row.uses and not row.constructions}
    assert usual == {"wall", "ceiling", "floor", "pane", "leaf", "furnishing", "covering"}
