"""Houses for the rules with codes CTL."""

from __future__ import annotations

from common.houses import (
    on_wall,
    two_rooms_and_hall,
    zone,
)
from common.rule_houses.form import Houses

KEYPAD = on_wall("keypad", "keypad", "kitchen-wall", 1.0, side="right", height_m=1.3)
UNIT_IN_HALL = on_wall("unit", "unit", "study-wall", 2.0, height_m=1.5)
UNIT_IN_STUDY = on_wall("unit", "unit", "study-wall", 2.0, side="right", height_m=1.5)
# In the study's south-east corner, looking out of it.
STUDY_FAN = on_wall("study-fan", "fan", "south", 10.1, heading_deg=135.0)
STUDY_ZONE = zone(1, "Study movement", "study-fan")

HOUSES: dict[str, Houses] = {
    "CTL101": Houses(
        fires=two_rooms_and_hall(devices=(KEYPAD, UNIT_IN_HALL, STUDY_FAN), zones=(STUDY_ZONE,)),
        silent=two_rooms_and_hall(devices=(KEYPAD, UNIT_IN_STUDY)),
        cannot_run=two_rooms_and_hall(devices=(UNIT_IN_HALL,)),
    ),
    "CTL102": Houses(
        fires=two_rooms_and_hall(devices=(KEYPAD, UNIT_IN_HALL, STUDY_FAN), zones=(STUDY_ZONE,)),
        silent=two_rooms_and_hall(devices=(KEYPAD, UNIT_IN_STUDY, STUDY_FAN), zones=(STUDY_ZONE,)),
        cannot_run=two_rooms_and_hall(devices=(UNIT_IN_HALL, STUDY_FAN)),
    ),
}
