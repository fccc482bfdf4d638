"""Houses for the rules with codes FIX."""

from __future__ import annotations

from common.houses import on_opening, on_wall, one_room, window
from common.rule_houses.form import Houses
from wardwright.model.device import Fixing

PAPERED = Fixing(by="adhesive", surface="wallpaper", paint_days=7.0)
COLD = Fixing(by="adhesive", surface="upvc", surface_c=4.0)
WARM = Fixing(by="adhesive", surface="upvc", surface_c=18.0)
TAPED = Fixing(by="adhesive", surface="plaster", surface_c=18.0)
SCREWED = Fixing(by="screws", surface="plaster")
WINDOW = (window("window", "north", 2.65),)

HOUSES: dict[str, Houses] = {
    "FIX101": Houses(
        fires=one_room(
            openings=WINDOW,
            devices=(
                on_wall("papered", "fan-plain", "south", 2.0).model_copy(update={"fixing": PAPERED}),
                on_opening("cold", "window", "contact-taped").model_copy(update={"fixing": COLD}),
            ),
        ),
        silent=one_room(
            openings=WINDOW,
            devices=(on_opening("warm", "window", "contact-taped").model_copy(update={"fixing": WARM}),),
        ),
        cannot_run=one_room(devices=(on_wall("undecided", "fan-plain", "south", 2.0),)),
    ),
    "FIX102": Houses(
        fires=one_room(
            openings=WINDOW,
            devices=(
                on_wall("aimed", "fan-plain", "south", 2.0).model_copy(update={"fixing": TAPED}),
                on_wall("forbidden", "fan-better", "south", 3.0).model_copy(update={"fixing": TAPED}),
                on_opening("told", "window", "contact-taped").model_copy(update={"fixing": TAPED}),
            ),
        ),
        silent=one_room(
            openings=WINDOW,
            devices=(
                on_wall("screwed", "fan-plain", "south", 2.0).model_copy(update={"fixing": SCREWED}),
                on_opening("on-upvc", "window", "contact-taped").model_copy(update={"fixing": WARM}),
            ),
        ),
        cannot_run=one_room(devices=(on_wall("undecided", "fan-plain", "south", 2.0),)),
    ),
}
