from __future__ import annotations

from wardwright.intake.plain_names import with_plain_names
from wardwright.model.fabric import Storey
from wardwright.model.site import Site


def test_names_that_cannot_be_shown_are_made_plain() -> None:
    storeys = (
        Storey(id="ground", name="Erd\tgeschoss", elevation_m=0.0),
        Storey(id="first", name="\x07", elevation_m=3),
    )
    made = with_plain_names(Site(name="a\nb", storeys=storeys))
    assert (made.name, [storey.name for storey in made.storeys]) == ("a b", ["Erd geschoss", "first"])
    assert with_plain_names(made) is made
