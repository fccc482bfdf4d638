"""Rules about room to open and serve devices: codes SRV."""

from __future__ import annotations

from wardwright.rules.registry import Rule
from wardwright.rules.service.no_room_to_service_a_device import no_room_to_service_a_device

SERVICE_RULES: tuple[Rule, ...] = (no_room_to_service_a_device,)
"""In code order."""
