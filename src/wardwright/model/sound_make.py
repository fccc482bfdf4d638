"""What a wall, a floor, a leaf or a room is taken to be made of, as far as sound goes: rows of the catalogue.

What nobody told is not known: a wall of unknown make has a lightest, a likely and a heaviest row.
"""

from __future__ import annotations

from functools import lru_cache

from wardwright.errors import CatalogueError
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import DeviceKind
from wardwright.model.device_sheets import DeviceSheet
from wardwright.model.fabric import Space, Wall
from wardwright.model.fixture import FixtureKind
from wardwright.model.opening import Opening
from wardwright.model.sound_rows import Absorption, LeafKind, Surface

Bands = tuple[float, ...]
"""One number for each octave band."""
Makes = tuple[Bands, Bands, Bands]
"""Losses of the lightest, the likely and the heaviest make. [dB]"""
UNKNOWN_THIN = ("stud-wall", "stud-wall", "brick-100")
"""Lightest, likely and heaviest of a thin wall whose make is not known. (assumption)"""
UNKNOWN_THICK = ("stud-wall-wool", "brick-100", "block-200")
"""The same of a thick one. (assumption)"""
UNKNOWN_FLOOR = ("timber-floor", "timber-floor", "concrete-slab")
"""The same of a floor: no site says what it is made of. (assumption)"""
USUAL_PANE = "sealed-double-glass"
"""What a pane is taken to be whose glazing is not told. (assumption)"""
THIN_M = 0.13
"""A wall up to this thickness is a thin one. [m] (assumption)"""
OPEN: Bands = (0.0,) * 6


def _loss(catalogue: Catalogue, row_id: str) -> Bands:
    for row in catalogue.transmissions:
        if row.id == row_id:
            return row.loss_db
    raise CatalogueError(
        f"there is no transmission '{row_id}'", where="catalogue", cure="Add its row to sound.toml"
    )


def _same(bands: Bands) -> Makes:
    return (bands, bands, bands)


def is_known(catalogue: Catalogue, wall: Wall) -> bool:
    """Whether a row stands for what a wall is made of."""
    return any(wall.construction in row.constructions for row in catalogue.transmissions)


def _one_wall(catalogue: Catalogue, wall: Wall) -> Makes:
    for row in catalogue.transmissions:
        if wall.construction in row.constructions:
            return _same(row.loss_db)
    light, likely, heavy = UNKNOWN_THIN if wall.thickness_m <= THIN_M else UNKNOWN_THICK
    return (_loss(catalogue, light), _loss(catalogue, likely), _loss(catalogue, heavy))


def wall_losses(catalogue: Catalogue, walls: tuple[Wall, ...]) -> Makes:
    """What the walls between two spaces take off.

    Parameters
    ----------
    catalogue : Catalogue
        Its rows of transmission.
    walls : tuple of Wall
        One behind another; none: what is there is not known.

    Returns
    -------
    tuple of three tuples
        By make and octave band. The best of several walls counts alone, so that no more is promised than it
        keeps back. [dB]
    """
    if not walls:
        light, likely, heavy = (_loss(catalogue, one) for one in UNKNOWN_THIN)
        return (light, likely, heavy)
    each = [_one_wall(catalogue, wall) for wall in walls]
    best = [tuple(max(band) for band in zip(*makes, strict=True)) for makes in zip(*each, strict=True)]
    return (best[0], best[1], best[2])


def floor_losses(catalogue: Catalogue) -> Makes:
    """What a floor between two storeys takes off. [dB]"""
    light, likely, heavy = (_loss(catalogue, one) for one in UNKNOWN_FLOOR)
    return (light, likely, heavy)


def leaf_loss(catalogue: Catalogue, opening: Opening, *, is_outside: bool) -> Bands:
    """What a shut leaf or pane takes off.

    Parameters
    ----------
    catalogue : Catalogue
        Its rows of transmission.
    opening : Opening
        The opening.
    is_outside : bool
        Whether it leads to the open air.

    Returns
    -------
    tuple of float
        By octave band; a leaf with glass in it is no better than the glass. [dB]
    """
    if opening.kind == "gap":
        return OPEN
    pane = _pane(catalogue, opening)
    if opening.kind in ("window", "rooflight"):
        return pane or _loss(catalogue, USUAL_PANE)
    kinds: dict[str, LeafKind] = {"garage-door": "garage-door", "hatch": "hatch"}
    kind = kinds.get(opening.kind, "outside-door" if is_outside else "inside-door")
    leaf = next(row.loss_db for row in catalogue.transmissions if kind in row.leaves)
    return leaf if pane is None else tuple(min(pair) for pair in zip(leaf, pane, strict=True))


def _pane(catalogue: Catalogue, opening: Opening) -> Bands | None:
    for row in catalogue.transmissions:
        if opening.glazing in row.glazings:
            return row.loss_db
    return None


def swallowed_by(catalogue: Catalogue, of: Surface, *, space: Space, wall: Wall | None = None) -> Absorption:
    """The row of a surface of a space: one that names its use or its wall's construction, else the usual one."""
    construction = None if wall is None else wall.construction
    return _swallowed(catalogue, of, use=space.use, construction=construction)


@lru_cache(maxsize=512)
def _swallowed(catalogue: Catalogue, of: Surface, *, use: str, construction: str | None) -> Absorption:
    rows = [row for row in catalogue.absorptions if row.of == of and not row.fixtures]
    for row in rows:
        if use in row.uses or (construction is not None and construction in row.constructions):
            return row
    for row in rows:
        if not row.uses and not row.constructions:
            return row
    raise CatalogueError(
        f"there is no absorption of a {of}", where="catalogue", cure="Add its row to sound.toml"
    )


def fixture_absorption(catalogue: Catalogue, kind: FixtureKind) -> Bands | None:
    """What a fixture of a kind swallows over its top; None: nothing worth counting."""
    for row in catalogue.absorptions:
        if kind in row.fixtures:
            return row.coefficients
    return None


def spectrum_of(catalogue: Catalogue, kind: DeviceKind) -> Bands:
    """How the A-weighted sound of a device is shared out among the octave bands."""
    for row in catalogue.spectrums:
        if kind in row.kinds:
            return row.shares
    raise CatalogueError(
        f"there is no spectrum of a {kind}", where="catalogue", cure="Add its row to sound.toml"
    )


def stated_level(sheet: DeviceSheet) -> tuple[float, float, float | None] | None:
    """What a sheet states of its sound.

    Parameters
    ----------
    sheet : DeviceSheet
        Of any device.

    Returns
    -------
    tuple of float, or None
        Level [dBA], the distance that it is stated at [m], its one tone [Hz] or None for a sweep; None as a whole for
        what is no sounder, or whose sheet is silent.
    """
    if sheet.sounder is not None:
        return sheet.sounder.level_dba, 1.0, sheet.sounder.tone_hz
    if sheet.fire is not None:
        return sheet.fire.level_dba, 3.0, sheet.fire.tone_hz
    if sheet.control is not None and sheet.control.has_sounder and sheet.control.level_dba is not None:
        return sheet.control.level_dba, 1.0, None
    return None
