"""What people call things, and the word that a line of notes begins with: only to tell them that word."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

TRADE_WORDS: Mapping[str, str] = MappingProxyType(
    {
        **dict.fromkeys(
            ("pir", "detector", "movement", "motion", "motion-detector", "sensor"), "movement-detector"
        ),
        **dict.fromkeys(("siren", "bell", "horn"), "sounder"),
        **dict.fromkeys(("panel", "control", "control-panel", "alarm-panel", "hub"), "control-unit"),
        **dict.fromkeys(("reed", "magnet", "magnetic-contact", "door-contact", "window-contact"), "contact"),
        **dict.fromkeys(("fob", "remote"), "keyfob"),
        "level": "storey",
        **dict.fromkeys(("smoke", "smoke-detector"), "smoke-alarm"),
        **dict.fromkeys(("heat", "heat-detector"), "heat-alarm"),
        **dict.fromkeys(("co", "carbon-monoxide", "co-detector"), "co-alarm"),
        **dict.fromkeys(("flood", "leak", "flood-detector", "leak-detector"), "water-detector"),
        **dict.fromkeys(("glass-break", "glassbreak", "acoustic"), "glass-break-detector"),
        **dict.fromkeys(("shock", "vibration"), "shock-detector"),
        **dict.fromkeys(("panic", "panic-button", "pa"), "hold-up-button"),
        **dict.fromkeys(("cctv", "cam"), "camera"),
    }
)
"""Other words that people begin such lines with: the word to write."""
