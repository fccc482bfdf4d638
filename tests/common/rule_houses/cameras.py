"""Houses for the rules with codes CAM."""

from __future__ import annotations

from common.houses import on_ceiling, on_wall, one_room
from common.room_over_room import back_addition, room_over_room
from common.rule_houses.form import Houses

# The ground is 0.15 m below the floor; the outer faces of the walls are on the right of their lines.
INSIDE = on_wall("inside", "camera", "south", 2.5, height_m=2.2)

# Under the eaves, beside the bedroom's window; its middle is 4.34 m north.
UPSTAIRS = on_wall("upstairs", "camera-outside", "upper-north", 1.45, side="right", height_m=2.2)

HOUSES: dict[str, Houses] = {
    "CAM101": Houses(
        fires=room_over_room(
            devices=(
                on_wall("low", "camera-outside", "south", 2.0, side="right", height_m=2.2),
                on_wall("by-the-roof", "camera-outside", "upper-north", 2.0, side="right", height_m=2.0),
            ),
            ground=back_addition(),
        ),
        silent=room_over_room(
            devices=(on_wall("high", "camera-outside", "south", 2.0, side="right", height_m=2.35), UPSTAIRS)
        ),
        cannot_run=room_over_room(devices=(INSIDE,)),
    ),
    "CAM102": Houses(
        fires=room_over_room(devices=(UPSTAIRS,), ground=back_addition()),
        silent=room_over_room(devices=(UPSTAIRS,)),
        cannot_run=room_over_room(devices=(INSIDE,)),
    ),
    "CAM103": Houses(
        fires=one_room(devices=(INSIDE.model_copy(update={"is_covered_when_home": False}),)),
        silent=one_room(devices=(INSIDE.model_copy(update={"is_covered_when_home": True}),)),
        cannot_run=one_room(
            devices=(
                INSIDE,
                on_wall("outside", "camera-outside", "south", 2.5, side="right", height_m=2.35),
            )
        ),
    ),
    "CAM104": Houses(
        fires=one_room(
            devices=(
                on_wall("low-outside", "camera-outside", "south", 2.0, side="right", height_m=2.0),
                on_wall("low-inside", "camera", "south", 3.0, height_m=0.9),
            ),
        ),
        silent=one_room(
            devices=(
                on_wall("outside", "camera-outside", "south", 2.0, side="right", height_m=2.1),
                on_wall("inside", "camera", "south", 3.0, height_m=2.2),
                on_ceiling("overhead", "camera", 2.0, 2.0),
            ),
        ),
        cannot_run=one_room(),
    ),
}
