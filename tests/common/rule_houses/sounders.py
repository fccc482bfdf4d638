"""Houses for the rules with codes SND."""

from __future__ import annotations

from common.houses import on_wall, two_rooms_and_hall
from common.rule_houses.control import UNIT_IN_STUDY
from common.rule_houses.form import Houses
from common.rule_houses.keypads import KEYPAD
from wardwright.model.fixture import Fixture
from wardwright.model.surroundings import Ground, GroundThing

# Beside the unit in the study, at (6.24, 2.8), and in the hall, on the way in.
BESIDE = on_wall("beside", "sounder", "study-wall", 2.8, side="right")
IN_HALL = on_wall("in-hall", "sounder", "study-wall", 2.0)
IN_KITCHEN = on_wall("in-kitchen", "sounder", "west", 1.15)
# On the outer face of the south wall, 0.15 m above the ground's level: the house's floor is at 0.
TALL = two_rooms_and_hall().storeys[0].model_copy(update={"height_m": 5.0})
LOW = on_wall("low", "sounder-outside", "south", 8.0, side="right", height_m=2.5)
MIDDLING = on_wall("middling", "sounder-outside", "south", 2.0, side="right", height_m=3.2)
HIGH = on_wall("high", "sounder-outside", "south", 2.0, side="right", height_m=4.0)
SHED = GroundThing(
    id="shed",
    name="shed",
    kind="shed",
    outline_m=((1.0, -2.0), (3.0, -2.0), (3.0, -0.5), (1.0, -0.5)),
    height_m=2.0,
    can_be_climbed=True,
)
WITH_SHED = Ground(things=(SHED,))

# Beds in the study: behind its door, and in the room of the sounder itself.
BED = Fixture(
    id="bed", name="bed", storey="ground", kind="bed", centre_m=(9.0, 1.2), size_m=(0.9, 2.0), height_m=0.5
)
IN_STUDY = on_wall("in-study", "sounder", "study-wall", 1.15, side="right")
SHRILL = on_wall("shrill", "sounder-shrill", "study-wall", 1.15, side="right", height_m=1.7)
LONELY = Ground(road_m=((-5.0, -400.0), (15.0, -400.0)))
BY_THE_STREET = Ground(road_m=((-5.0, -10.0), (15.0, -10.0)))

HOUSES: dict[str, Houses] = {
    "SND101": Houses(
        fires=two_rooms_and_hall(devices=(KEYPAD, UNIT_IN_STUDY, BESIDE)),
        silent=two_rooms_and_hall(devices=(KEYPAD, UNIT_IN_STUDY, IN_KITCHEN)),
        cannot_run=two_rooms_and_hall(devices=(KEYPAD, UNIT_IN_STUDY)),
    ),
    "SND102": Houses(
        fires=two_rooms_and_hall(devices=(LOW, MIDDLING), storeys=(TALL,)),
        silent=two_rooms_and_hall(devices=(HIGH,), storeys=(TALL,)),
        cannot_run=two_rooms_and_hall(devices=(IN_KITCHEN,)),
    ),
    "SND103": Houses(
        fires=two_rooms_and_hall(devices=(KEYPAD, UNIT_IN_STUDY, IN_HALL)),
        silent=two_rooms_and_hall(devices=(IN_HALL, IN_KITCHEN)),
        cannot_run=two_rooms_and_hall(devices=(KEYPAD,)),
    ),
    "SND104": Houses(
        fires=two_rooms_and_hall(devices=(IN_KITCHEN,), fixtures=(BED,)),
        silent=two_rooms_and_hall(devices=(IN_STUDY,), fixtures=(BED,)),
        cannot_run=two_rooms_and_hall(devices=(IN_STUDY,)),
    ),
    "SND105": Houses(
        fires=two_rooms_and_hall(devices=(SHRILL,), fixtures=(BED,)),
        silent=two_rooms_and_hall(devices=(IN_STUDY,), fixtures=(BED,)),
        cannot_run=two_rooms_and_hall(devices=(HIGH,)),
    ),
    "SND106": Houses(
        fires=two_rooms_and_hall(devices=(HIGH,), storeys=(TALL,), ground=LONELY),
        silent=two_rooms_and_hall(devices=(HIGH,), storeys=(TALL,), ground=BY_THE_STREET),
        cannot_run=two_rooms_and_hall(devices=(HIGH,), storeys=(TALL,)),
        is_mend_computed=False,  # where nobody is near, no place helps
    ),
}
