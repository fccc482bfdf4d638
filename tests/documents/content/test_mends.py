from __future__ import annotations

from typing import get_args

import pytest

from wardwright.documents.content.mends import mend_sentence
from wardwright.documents.content.names import Names, names_of
from wardwright.documents.content.wording import ACTIONS
from wardwright.model.catalogue import Catalogue
from wardwright.model.estimate import Estimate
from wardwright.model.site import Site
from wardwright.rules.finding import Mend


@pytest.mark.parametrize(
    ("action", "subject", "values", "words"),
    [
        ("move-device", "md-living", (("offset_m", 0.6), ("height_m", 2.2)),
         "Move Living room movement detector: distance along its wall 0.6 m, 2.2 m above the floor."),
        ("move-device", "control-unit",
         (("on", "wall"), ("wall", "g-hall"), ("side", "right"), ("offset_m", 0.4), ("height_m", 1.5)),
         ("Move Hall control unit: in Living room, on its wall to Hall, 0.4 m from the wall\u2019s lower end on the "
         "plan, 1.5 m above the floor.")),
        ("turn-device", "md-living", (("heading_deg", 135.0),),
         "Turn Living room movement detector: looking to the upper left on the plan (135\u00b0)."),
        ("add-device", "kitchen-window", (("sheet", "contact"), ("behaviour", "instant")),
         "Add a contact at kitchen window: behaviour instant."),
        ("change-programme", "programme", (("abort_delay_s", 0.0),), "Change the programme: abort delay 0 s."),
        ("change-behaviour", "zone-1", (("behaviour", "instant"),),
         "Give zone 1 (Front door) the behaviour instant."),
        ("rename", "zone-1", (("name", "Ground hall"),), "Rename zone 1 (Front door): \u201cGround hall\u201d."),
        ("change-mount", "oc-back", (("electronics_on", "frame"), ("gap_m", 0.008)),
         "Mount Back door contact otherwise: electronics on the frame, gap between its parts 8 mm."),
        ("change-lock", "back-door", (("what", "lock"),), "Fit a better lock at back door."),
        ("change-lock", "kitchen-window", (("what", "glazing"),), "Fit a better pane at kitchen window."),
        ("add-light", "back-door", (), "Add a light that comes on by itself at back door."),
        ("tell", "oc-back", (("field", "gap_m"),), "Find out and note gap between its parts of Back door contact."),
        ("remove-device", "not-there", (), "Take not-there away."),
    ],
)  # fmt: skip
def test_a_mend_is_a_sentence(
    action: str, subject: str, values: tuple[tuple[str, str | float], ...], words: str,
    site: Site, catalogue: Catalogue,
) -> None:  # fmt: skip
    mend = Mend(action=action, subject=subject, values=values)  # type: ignore[arg-type] # parametrised
    assert mend_sentence(mend, names_of(site, catalogue)) == words


def test_every_action_has_words() -> None:
    assert set(ACTIONS) == set(get_args(Mend.model_fields["action"].annotation))


def test_what_a_mend_brings_is_said_with_its_range() -> None:
    gain = Estimate(value=170.0, low=90.0, high=297.0, unit="s")
    lock = Mend(action="change-lock", subject="door", values=(("what", "lock"),), gain=gain)
    assert mend_sentence(lock, Names()).endswith("It would hold longer by 170 s (90 to 297 s).")
    move = Mend(action="move-device", subject="unit", gain=gain)
    assert mend_sentence(move, Names()).endswith("In hand then: 170 s (90 to 297 s).")


def test_a_place_on_a_ceiling_is_told_as_one_piece() -> None:
    values = (("on", "ceiling"), ("storey", "first"), ("x_m", 1.84), ("y_m", 2.0))
    mend = Mend(action="add-device", subject="loft", values=(("sheet", "smoke"), *values))
    told = mend_sentence(mend, Names({"loft": "Sleeping loft", "smoke": "smoke alarm"}), is_plain=True)
    assert told == "Add a smoke alarm at Sleeping loft: on the ceiling, at x 1.8 m, y 2.0 m on the plan."
