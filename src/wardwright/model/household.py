"""Who lives there, and what an intruder would come for."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wardwright.model.record import Id, Marked, Point2


class Person(Marked):
    """Somebody who uses the alarm."""

    id: Id
    name: str
    """A role, such as `grandmother`: no surname is needed."""
    pace: Literal["slow", "usual", "quick"] = "usual"
    bed: Id | None = None
    """The space where they sleep."""
    hears_badly: bool = False
    is_child: bool = False
    sleeps_heavily: bool = False
    """Hard to wake, by drink, medicine or habit."""


class Pet(Marked):
    """An animal that moves about while the house is set."""

    id: Id
    name: str
    kind: Literal["cat", "small-dog", "big-dog", "rabbit", "bird", "other"] = "other"
    height_m: Annotated[float, Field(gt=0, le=1.5)] = 0.3
    mass_kg: Annotated[float, Field(gt=0, le=120)] = 5.0
    spaces: tuple[Id, ...] = ()
    """Where it may be while the house is set; none named: everywhere."""


class Target(Marked):
    """What an intruder would come for; by space, never by thing."""

    id: Id
    name: str
    space: Id
    at_m: Point2 | None = None
    """Where in the space; None: anywhere in it, so its nearest point. [m]"""
    worth: Literal["low", "medium", "high"] = "medium"
