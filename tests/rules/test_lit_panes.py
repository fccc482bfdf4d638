from __future__ import annotations

from wardwright.model.placement import along, standing
from wardwright.rules.lit_panes import blinds_on, line_to_pane
from wardwright.store.samples import read_sample


def test_the_line_runs_from_the_device_to_the_middle_of_the_pane() -> None:
    site = read_sample("terrace")
    device, opening = site.device("living-movement"), site.opening("living-window")
    place = standing(site, device)
    line = line_to_pane(site, place, opening)
    assert line.points == ((place.x_m, place.y_m), along(site.wall(opening.wall).line_m, opening.offset_m))
    assert (line.role, line.storey, line.label) == ("fault", place.storey, opening.name)


def test_each_pane_gets_a_blind_in_its_order() -> None:
    assert [(one.subject, one.values) for one in blinds_on(["b", "a"])] == [
        ("b", (("covering", "blind"),)),
        ("a", (("covering", "blind"),)),
    ]
