"""For each rule: a house where it fires, one where it is silent, one where it cannot run; a file a subject."""

from __future__ import annotations

from common.rule_houses import (
    cameras,
    contacts,
    control,
    fire,
    fixing,
    glass,
    keypads,
    links,
    movement,
    names,
    power,
    programme,
    service,
    sounders,
    sunlight,
    water,
)
from common.rule_houses.form import Houses

HOUSES: dict[str, Houses] = {
    **cameras.HOUSES,
    **contacts.HOUSES,
    **control.HOUSES,
    **fire.HOUSES,
    **fixing.HOUSES,
    **glass.HOUSES,
    **keypads.HOUSES,
    **links.HOUSES,
    **movement.HOUSES,
    **names.HOUSES,
    **power.HOUSES,
    **programme.HOUSES,
    **service.HOUSES,
    **sounders.HOUSES,
    **sunlight.HOUSES,
    **water.HOUSES,
}
