"""Houses for the rules with codes CAM."""

from __future__ import annotations

from common.houses import on_ceiling, on_wall, one_room, opening
from common.room_over_room import back_addition, room_over_room
from common.rule_houses.form import Houses
from wardwright.model.surroundings import Ground, GroundThing

# The ground is 0.15 m below the floor; the outer faces of the walls are on the right of their lines.
INSIDE = on_wall("inside", "camera", "south", 2.5, height_m=2.2)

# Under the eaves, beside the bedroom's window; its middle is 4.34 m north.
UPSTAIRS = on_wall("upstairs", "camera-outside", "upper-north", 1.45, side="right", height_m=2.2)

PLOT = ((-3.0, -5.0), (8.0, -5.0), (8.0, 8.0), (-3.0, 8.0))
DOOR = opening("front-door", "south", 2.65, is_entry_door=True)
# Tall walls on the boundary to the south, the east and the west.
HEDGES = tuple(
    GroundThing(
        id=name, name=name, kind="wall", height_m=9.0, outline_m=((x0, y0), (x1, y0), (x1, y1), (x0, y1))
    )
    for name, (x0, y0, x1, y1) in {
        "south-hedge": (-3.0, -5.0, 8.0, -4.8),
        "east-hedge": (7.8, -5.0, 8.0, 8.0),
        "west-hedge": (-3.0, -5.0, -2.8, 8.0),
    }.items()
)
OUT = on_wall(
    "out", "camera-outside", "south", 0.5, side="right", height_m=2.35, heading_deg=-50.0, tilt_deg=20.0
)
# Looking straight ahead over a plot that ends 19.7 m before it, past a door that its wall does not hide.
WIDE_PLOT = ((-30.0, -20.0), (30.0, -20.0), (30.0, 8.0), (-30.0, 8.0))
AHEAD = OUT.model_copy(update={"heading_deg": -50.0, "tilt_deg": 0.0})
FAR_DOOR = opening("front-door", "south", 4.4, is_entry_door=True)
BEDROOM = (one_room().spaces[0].model_copy(update={"use": "bedroom", "name": "Bedroom"}),)

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
    "CAM105": Houses(
        fires=one_room(devices=(AHEAD,), openings=(FAR_DOOR,), ground=Ground(boundary_m=WIDE_PLOT)),
        silent=one_room(devices=(OUT,), openings=(DOOR,), ground=Ground(boundary_m=PLOT, things=HEDGES)),
        cannot_run=one_room(devices=(INSIDE,)),
    ),
    "CAM106": Houses(
        fires=one_room(devices=(INSIDE,), spaces=BEDROOM),
        silent=one_room(devices=(INSIDE,)),
        cannot_run=one_room(devices=(OUT,)),
    ),
    "CAM107": Houses(
        fires=one_room(devices=(OUT.model_copy(update={"tilt_deg": -20.0}),), openings=(DOOR,)),
        silent=one_room(
            devices=(OUT.model_copy(update={"heading_deg": -10.0, "tilt_deg": 30.0}),), openings=(DOOR,)
        ),
        cannot_run=one_room(devices=(OUT,)),
    ),
}
