"""Rooms held against a library of room acoustics: reverberation, and levels by image sources."""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np
import pyroomacoustics as pra

from accuracy.rows import Row
from wardwright.physics.sound.reverberation import eyring_time, sabine_time
from wardwright.physics.sound.room_level import level_in_room

SIDES_M = (5.0, 4.0, 2.5)
VOLUME_M3, SURFACE_M2 = 50.0, 85.0
SOURCE = (1.2, 1.1, 1.3)
# Kept from an earlier run of both pyroomacoustics 0.10.1 and acoustics 0.2.6, which agree. [s]
KEPT_S = {0.1: (0.94773, 0.89951), 0.2: (0.47386, 0.42472), 0.3: (0.31591, 0.26571)}
# Image sources of the same library, run apart from this program: mean level re direct at 1 m. [dB]
KEPT_DB = {0.1: 7.62, 0.2: 4.01, 0.3: 1.63, 0.5: -1.77}


def accuracy_rows() -> Iterator[Row]:
    """The rows for docs/accuracy.md."""
    for mean, (sabine, eyring) in KEPT_S.items():
        ours = float(sabine_time(VOLUME_M3, SURFACE_M2 * mean))
        yield Row(
            f"reverberation by Sabine, 5 x 4 x 2.5 m, {mean:g} [s]", "pyroomacoustics 0.10.1 and acoustics 0.2.6",
            sabine, ours, 0.0000051, "five decimals", "reference tool",
        )  # fmt: skip
        yield Row(
            f"reverberation by Sabine, asked for now, {mean:g} [s]", "pyroomacoustics, rt60_sabine",
            float(pra.acoustics.rt60_sabine(SURFACE_M2, VOLUME_M3, mean, 0.0, 343.0)), ours, 1e-9, "one formula",
            "reference tool",
        )  # fmt: skip
        ours = float(eyring_time(VOLUME_M3, surface=SURFACE_M2, absorption=mean))
        yield Row(
            f"reverberation by Eyring, 5 x 4 x 2.5 m, {mean:g} [s]", "pyroomacoustics 0.10.1 and acoustics 0.2.6",
            eyring, ours, 0.0000051, "five decimals", "reference tool",
        )  # fmt: skip
        yield Row(
            f"reverberation by Eyring, asked for now, {mean:g} [s]", "pyroomacoustics, rt60_eyring",
            float(pra.acoustics.rt60_eyring(SURFACE_M2, VOLUME_M3, mean, 0.0, 343.0)), ours, 1e-9, "one formula",
            "reference tool",
        )  # fmt: skip
    places = _places()
    away = np.linalg.norm(places - np.asarray(SOURCE), axis=1)
    for mean, kept in KEPT_DB.items():
        # Re the direct sound at 1 m: a source of 10.99 dB re 1 pW in the free field.
        ours = level_in_room([10.0 * np.log10(4.0 * np.pi)], away, surface=SURFACE_M2, absorption=[mean])
        yield Row(
            f"mean level in a room, 5 x 4 x 2.5 m, {mean:g}, re direct at 1 m [dB]",
            "image sources by pyroomacoustics, asked for now, the same 20 places",
            by_images(mean, places), float(ours.mean()), 1.0, "the room is no diffuse field", "reference tool",
        )  # fmt: skip
        yield Row(
            f"the same beside the kept run, at 20 other places: {mean:g} [dB]",
            "image sources by pyroomacoustics 0.10.1, kept", kept, float(ours.mean()), 1.0,
            "the room is no diffuse field, and the places are others", "reference tool",
        )  # fmt: skip


def _places() -> np.ndarray:
    """Twenty places farther than 1.5 m from the source, always the same."""
    drawn = np.random.default_rng(7).uniform((0.3, 0.3, 0.3), np.asarray(SIDES_M) - 0.3, (200, 3))
    return drawn[np.linalg.norm(drawn - np.asarray(SOURCE), axis=1) > 1.5][:20]


def by_images(mean: float, places: np.ndarray) -> float:
    """Mean over the places of the level by image sources, re the direct sound at 1 m. [dB]"""
    rate = 16000
    # As many orders as bring the last one 60 dB down.
    orders = int(np.ceil(6.0 / -np.log10(1.0 - mean)))
    room = pra.ShoeBox(list(SIDES_M), fs=rate, materials=pra.Material(mean), max_order=min(orders, 60))
    room.add_source(list(SOURCE))
    room.add_microphone_array(np.ascontiguousarray(places.T))
    room.image_source_model()
    levels = []
    for place in places:
        images = room.sources[0].images
        damping = (
            room.sources[0].damping.prod(axis=0)
            if room.sources[0].damping.ndim > 1
            else room.sources[0].damping
        )
        away = np.linalg.norm(images - place[:, None], axis=0)
        levels.append(10.0 * np.log10(((damping / away) ** 2).sum()))
    return float(np.mean(levels))
