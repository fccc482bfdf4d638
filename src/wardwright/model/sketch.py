"""What an answer or a finding asks to be drawn: plain places and a role, no ink."""

from __future__ import annotations

from typing import Literal

from wardwright.model.record import Id, Point2, Record, Ring


class Sketch(Record):
    """One thing to draw on one storey's plan."""

    role: Literal[
        "walk",  # an intruder's or a person's way: an open line with a time at each point
        "unnoticed",  # the part of a way before anything notices
        "notice",  # the place where something first notices
        "goal",  # what is reached: control unit, target
        "seen",  # floor that a detector surely notices within
        "possibly-seen",  # floor where it may notice
        "blind",  # floor of its own space it does not see
        "leak",  # floor outside its own space that it sees
        "distance",  # a distance that is held against a limit: a line with its length, or a place with it
        "level",  # a sound level that is heard at a place, as a figure
        "timely",  # floor where being noticed still helps
        "arrival-band",  # floor that the household is on when it comes in and leaves
        "arrival-seen",  # the part of it that a detector possibly sees
        "trip",  # floor of a trip of the household: the band of a walk and the rooms where people stay
        "trip-seen",  # the part of it that a detector possibly sees, every leaf away
        "radio-path",  # a radio path on one storey: a line of two points
        "radio-cost",  # what takes most of it: a piece of wall across it, or a point; the loss as the label
        "beam",  # the sun's way onto a lens: from outside, through a pane, to the lens
        "sunlit",  # floor in view on which the sun lies
        "task",  # a place that a camera shows, its label what the picture is dense enough for there
        "task-line",  # from a camera to the place that matters most in its picture
        "perch",  # a top that an animal gets onto under a detector's zones, its label how high that is
        "pet-line",  # from a detector to where its zones leave an animal least room
        "beaten",  # a path on which a design loses: an open line, its label the letter that it is told by
        "least-detected",  # the path on which devices are least likely to notice: the same
        "climb",  # a way up from outside, thing by thing, to an opening: an open line
        "climb-step",  # where a step of it ends, its label the height above the ground
        "fault",  # the place of a finding
        "suggestion",  # where a mend would put the thing
    ]
    storey: Id
    points: tuple[Point2, ...] = ()
    """A point (1), an open line (2 or more). [m]"""
    rings: tuple[Ring, ...] = ()
    """Outlines of an area; holes wind the other way. [m]"""
    times_s: tuple[float, ...] = ()
    """For a walk: the clock at each point. [s]"""
    label: str = ""
    """At most a few words."""
