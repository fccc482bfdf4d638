"""Device sheets: what the makers state, in one form for each kind of device."""

from __future__ import annotations

from datetime import date
from typing import Annotated, Literal

from pydantic import Field

from wardwright.model.device import DeviceKind, MountWord, Surface
from wardwright.model.link_sheets import RadioSheet, RepeaterSheet, TransmitterSheet
from wardwright.model.power_sheets import CellSheet, StandbySheet
from wardwright.model.record import Id, Record
from wardwright.model.rows import Row


class BeamRow(Record):
    """One row of heat-sensing zones of a movement detector."""

    name: str
    pairs: Annotated[int, Field(ge=1, le=64)]
    """Zone pairs across the fan, evenly spread over its angle."""
    depression_deg: Annotated[float, Field(ge=0, le=90)]
    """Below level, when mounted upright. [deg]"""


class MovementSheet(Record):
    """What a movement detector's sheet says."""

    reach_m: Annotated[float, Field(gt=0, le=60)]
    angle_deg: Annotated[float, Field(gt=0, le=360)]
    """The whole angle of the fan. [deg]"""
    height_low_m: float
    height_high_m: float
    """Between which heights it is to be mounted. [m]"""
    rows: Annotated[tuple[BeamRow, ...], Field(min_length=1)]
    pair_split_deg: Annotated[float, Field(gt=0, le=10)] = 1.6
    """Between the two halves of a pair. [deg]"""
    edges_needed: Annotated[int, Field(ge=1, le=10)] = 2
    """Zone edges that must be crossed. [-]"""
    window_s: Annotated[float, Field(gt=0, le=60)] = 5.0
    """Within this time. [s]"""
    least_contrast_k: Annotated[float, Field(gt=0, le=10)] = 1.7
    sleep_s: Annotated[float, Field(ge=0, le=900)] = 0.0
    """How long it stays quiet after it has signalled. [s]"""
    passes_animals_up_to_kg: float = 0.0
    hot_clearance_m: Annotated[float, Field(ge=0, le=5)] = 1.0
    """How far it is to be kept from things that get warm. [m]"""
    white_light_lux: Annotated[float, Field(ge=0, le=100_000)] | None = None
    """Light straight on it that it stands; None: its sheet is silent. [lx]"""


class ContactSheet(Record):
    """What an opening contact's sheet says."""

    gap_m: Annotated[float, Field(gt=0, le=0.2)]
    """The widest gap between its parts. [m]"""
    is_for_outdoors: bool = False
    """Whether the electronics stand rain."""
    form: Literal["surface", "recessed", "roller-door"] = "surface"
    """`recessed`: let into leaf and frame. `roller-door`: on the floor or the guide of a door that rolls."""


class SounderSheet(Record):
    """What a sounder's sheet says."""

    level_dba: Annotated[float, Field(gt=40, le=140)]
    """At 1 m. [dB re 20 uPa, A-weighted]"""
    tone_hz: Annotated[float, Field(ge=50, le=16_000)] | None = None
    """Its one tone; None: it sweeps, or its sheet is silent. [Hz]"""
    is_self_powered: bool = False
    """Whether it sounds by itself when it loses the control unit."""
    is_outside: bool = False


class ControlSheet(Record):
    """What a control unit's sheet says."""

    display_length: Annotated[int, Field(ge=4, le=64)] = 16
    """Letters that a zone's name may have."""
    zones: Annotated[int, Field(ge=1)] = 32
    users: Annotated[int, Field(ge=1)] = 16
    has_sounder: bool = False
    level_dba: Annotated[float, Field(gt=40, le=140)] | None = None
    """Of its own sounder at 1 m; None: its sheet is silent. [dB re 20 uPa, A-weighted]"""
    has_keypad: bool = False


class ShockSheet(Record):
    """What a shock detector's sheet says."""

    radius_m: Annotated[float, Field(gt=0, le=10)]
    """How far it feels a blow through one frame, leaf or wall without a joint. [m]"""
    surfaces: tuple[Surface, ...] = ()
    """What it may be fixed to; none named: anything stiff."""


class GlassBreakSheet(Record):
    """What an acoustic glass-break detector's sheet says."""

    reach_m: Annotated[float, Field(gt=0, le=15)]
    """To the farthest point of a pane in plain view. [m]"""
    curtained_reach_m: Annotated[float, Field(ge=0, le=15)] = 0.0
    """The same behind heavy curtains; 0: it does not hear through them. [m]"""
    least_pane_m: Annotated[float, Field(gt=0, le=3)] = 0.3
    """The shorter side of the smallest pane that it knows. [m]"""
    glazings: tuple[Id, ...] = ()
    """Rows of glazings that it is stated for; none named: its sheet is silent."""


class WaterSheet(Record):
    """What a water detector's sheet says."""

    lead_m: Annotated[float, Field(ge=0, le=10)] = 0.0
    """Length of the lead to its contacts; 0: they are under it. [m]"""
    contact_height_m: Annotated[float, Field(ge=0, le=0.1)] = 0.002
    """Of its contacts above what it stands on. [m]"""


class FireSheet(Record):
    """What a smoke, heat or CO alarm's sheet says."""

    level_dba: Annotated[float, Field(gt=40, le=140)]
    """At 3 m. [dB re 20 uPa, A-weighted]"""
    tone_hz: Annotated[float, Field(ge=50, le=16_000)] | None = None
    """Its one tone; None: its sheet is silent, and the usual high tone is taken. [Hz]"""
    coldest_c: Annotated[float, Field(ge=-40, le=60)] = 0.0
    warmest_c: Annotated[float, Field(ge=-40, le=120)] = 40.0
    """Between which temperatures it works. [deg C]"""
    is_linked: bool = True
    """Whether all of them sound when one does."""


class ButtonSheet(Record):
    """What a hold-up button's, a keypad's or a keyfob's sheet says of hands and reach."""

    height_low_m: Annotated[float, Field(ge=0, le=3)] | None = None
    height_high_m: Annotated[float, Field(ge=0, le=3)] | None = None
    """Between which heights it is to be mounted; None: its sheet is silent. [m]"""
    reach_m: Annotated[float, Field(gt=0, le=2000)] | None = None
    """How far from the control unit it works with a clear view; None: its sheet is silent. [m]"""
    presses: Annotated[int, Field(ge=1, le=3)] = 1
    """Presses within a second that it wants: two keep a hold-up button from being pressed by chance."""


class CameraSheet(Record):
    """What a camera's sheet says."""

    across_px: Annotated[int, Field(ge=160, le=16384)]
    """Picture elements across. [px]"""
    down_px: Annotated[int, Field(ge=120, le=16384)]
    """Picture elements from top to bottom. [px]"""
    angle_deg: Annotated[float, Field(gt=0, le=360)]
    """The whole angle across. [deg]"""
    height_low_m: Annotated[float, Field(ge=0, le=15)]
    height_high_m: Annotated[float, Field(ge=0, le=15)]
    """Between which heights it is to be mounted. [m]"""
    is_outside: bool = False
    has_cover: bool = False
    """Whether something of its own covers the lens when people are in."""
    night_reach_m: Annotated[float, Field(ge=0, le=200)] = 0.0
    """How far its own lamp carries. [m]"""


class DeviceSheet(Row):
    """What a device is: the maker's sheet, in one form."""

    kind: DeviceKind
    grade: Annotated[int, Field(ge=1, le=4)] | None = None
    environmental_class: Literal["I", "II", "III", "IV"] | None = None
    link: Literal["radio", "wired"] = "radio"
    frequency_mhz: float | None = None
    price: Annotated[float, Field(ge=0)] | None = None
    """What a fitter pays for one, before tax, in the currency of the place; None: not known."""
    fit_min: Annotated[float, Field(ge=0)] | None = None
    """To fit one at hand height on plaster; None: as is usual for its kind. [min]"""
    service_clearance_m: float = 0.0
    """Room that has to stay free to open it or to slide it off for its battery. [m]"""
    service_side: Literal["front", "above", "below", "beside"] = "front"
    """Where that room is."""
    mounts: tuple[MountWord, ...] = ()
    """What it may be fixed to; none named: what is usual for its kind."""
    fixings: tuple[Literal["screws", "adhesive"], ...] = ("screws",)
    """How it may be held."""
    detects_removal: bool = False
    """Whether it tells when it is taken off its place."""
    power: Literal["mains", "cell", "none"] = "cell"
    life_years: Annotated[float, Field(gt=0, le=40)] | None = None
    """From its making to the end of its life; None: its sheet is silent. [a]"""
    updates_until: date | None = None
    """The last day of security updates; None: it has none, or its sheet is silent."""
    check_in_min: Annotated[float, Field(gt=0, le=10080)] | None = None
    """How often it tells the control unit that it is there; None: its sheet is silent. [min]"""
    cells: CellSheet | None = None
    """Its cells; None: it has none, or its sheet is silent."""
    standby: StandbySheet | None = None
    """Its battery for a time without mains; None: it has none, or its sheet is silent."""
    movement: MovementSheet | None = None
    contact: ContactSheet | None = None
    shock: ShockSheet | None = None
    glass_break: GlassBreakSheet | None = None
    water: WaterSheet | None = None
    fire: FireSheet | None = None
    button: ButtonSheet | None = None
    sounder: SounderSheet | None = None
    control: ControlSheet | None = None
    camera: CameraSheet | None = None
    repeater: RepeaterSheet | None = None
    transmitter: TransmitterSheet | None = None
    radio: RadioSheet | None = None

    @property
    def cheapest_first(self) -> tuple[bool, float, str]:
        """What to sort sheets by so that the cheapest is first; those without a price are last, in order of ids."""
        return (self.price is None, self.price or 0.0, self.id)

    @property
    def is_outside(self) -> bool:
        """Whether it is made to hang outside the house."""
        return (self.sounder is not None and self.sounder.is_outside) or (
            self.camera is not None and self.camera.is_outside
        )

    @property
    def cell_rows(self) -> tuple[Id, ...]:
        """The rows of cells that it names."""
        own = () if self.cells is None else (self.cells.cell, *self.cells.also_takes)
        return own if self.standby is None else (*own, self.standby.battery)
