"""Who lives there, and what an intruder would come for."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wardwright.model.record import Id, Marked, Point2, Record


class Pass(Record):
    """Where somebody may be, and may not, while one part is set."""

    part: Id
    may: tuple[Id, ...] = ()
    """The spaces where they may be, besides the one they sleep in; none named: wherever they are not told not to."""
    may_not: tuple[Id, ...] = ()
    """Spaces where they are not to be: going there is a wrong turn, no ordinary trip."""


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
    comes: Literal["lives", "visits"] = "lives"
    """`visits`: a guest, a carer or a cleaner, who is there by day."""
    knows_code: bool = True
    """Whether they can set and unset the alarm."""
    passes: tuple[Pass, ...] = ()
    """Where they may be while a part is set; a part not named: wherever they like."""

    def may_be_in(self, space: str, part: str) -> bool:
        """Whether being in a space is ordinary for them while a part is set.

        Parameters
        ----------
        space : str
            Id of the space.
        part : str
            Id of the part.

        Returns
        -------
        bool
            Always true of the space where they sleep.

        Examples
        --------
        >>> upstairs = Pass(part="night", may=("landing",))
        >>> child = Person(id="child", name="child", bed="bedroom", passes=(upstairs,))
        >>> [child.may_be_in(one, "night") for one in ("bedroom", "landing", "kitchen")]
        [True, True, False]
        >>> child.may_be_in("kitchen", "full")
        True
        """
        if space == self.bed:
            return True
        told = [one for one in self.passes if one.part == part]
        named = [one for one in told if one.may]
        return (not named or any(space in one.may for one in named)) and not any(
            space in one.may_not for one in told
        )


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
