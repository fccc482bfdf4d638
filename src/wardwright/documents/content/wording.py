"""The texts of the papers: one catalogue, so that a word is changed in one place."""

from __future__ import annotations

from typing import Literal

from wardwright.model.record import Basis
from wardwright.model.rows import Mark
from wardwright.questions.answer import Verdict
from wardwright.rules.dangers import Danger
from wardwright.rules.finding import Severity

COPY_CLASS = "Fitter\u2019s copy"
COPY_WARNING = (
    "This is a plan of how to get into the house. Keep it: on your own machine, under lock when printed, "
    "and away from the customer\u2019s and the open papers."
)

WHAT_IT_IS = (
    "Answers worked out on a model of this house: each is a likely value with a range, and says what moves it most.",
    "An aid to a competent person who has seen the house.",
)
WHAT_IT_IS_NOT = (
    "Not a certificate, and no promise about any intruder: people and tools differ from the figures used.",
    "Not a fire design. Smoke, heat and CO alarms follow the local code and licensed practice.",
)
DANGERS: dict[Danger, str] = {
    "mains": "Mains work is for a competent electrician.",
    "drilling": "Drill nothing where services run: look for hidden cables and pipes first.",
    "old-coating": "Old coatings may hold asbestos: when in doubt, leave them be and ask.",
    "ladder": "Ladders: on firm ground, footed, never alone. A window that is a way out must stay in reach.",
    "way-out": "A door or window that is a way out in a fire must stay one, opened from inside without a search.",
    "fire": "Smoke, heat and CO alarms follow the local code and licensed practice: this checks distances only.",
}
"""The caution that stands by the mends whose work is dangerous."""
BEWARE = "Beware"
CAUTIONS = (
    *(DANGERS[one] for one in ("mains", "drilling", "old-coating", "ladder", "way-out")),
    "Crawling and very slow movement may pass a movement detector unnoticed, whatever is drawn here.",
)

VERDICTS: dict[Verdict, tuple[str, str]] = {
    "bad": ("not met", "not met at the likely value"),
    "thin": ("thin", "met at the likely value, not over the whole range"),
    "unknown": ("not known", "could not be worked out"),
    "good": ("met", "met over the whole range"),
}
"""A word and a phrase for each verdict, worst first."""

NOT_COUNTED_WORDS = "openings that nobody is taken to come in by"

SEVERITIES: dict[Severity, tuple[str, str]] = {
    "must mend": ("Must mend", "A contradiction, the device\u2019s own sheet, or a need that was stated."),
    "advise": ("Advised", "Common practice."),
    "check with the standard": (
        "Check with the standard",
        "Kept from memory, or editions conflict: look it up before relying on it.",
    ),
    "not run": ("Not run", "Something that the rule needs is not known. This is not a pass."),
}
"""A heading and what it means, gravest first."""

FINDING_GROUPS: dict[Severity | Literal["accepted"], tuple[str, str]] = {
    **{severity: words for severity, words in SEVERITIES.items() if severity != "not run"},
    "accepted": ("Accepted", "Found, seen, and lived with for the reason given. It is still so."),
    "not run": SEVERITIES["not run"],
}
"""The groups that findings are told in: those that are accepted stand apart, what was not run last."""
NONE_OF_THEM = "because there is none"
"""Stands before the kinds of device that the site has none of."""
BASES: dict[Basis, str] = {
    "measured": "measured, on site or in the building file",
    "told": "told by somebody",
    "guessed": "guessed by the intake",
    "default": "nobody said: the program\u2019s default",
}
MARKS: dict[Mark, str] = {
    "standard": "from a standard",
    "published": "published",
    "derived": "derived",
    "common practice": "common practice",
    "from memory": "from memory",
    "assumption": "assumption",
}

UNDETECTED = frozenset({5})
"""Questions whose value is how far somebody gets before anything notices."""
AT_ONCE = "at once"
"""In place of a walk of no length: whoever comes in is noticed where they come in."""
AT_ONCE_MEASURE = "noticed where they come in"
OR_WITHIN = "or within"

SIGNS: dict[str, str] = {
    "walk": "way walked, ticked in seconds",
    "unnoticed": "where nothing notices yet",
    "notice": "first noticed",
    "goal": "what is reached",
    "seen": "surely noticed here",
    "possibly-seen": "may be noticed here",
    "blind": "not seen in its own space",
    "leak": "sees outside its own space",
    "distance": "distance held against a limit",
    "level": "sound level there in dBA",
    "timely": "edge of where being noticed still helps",
    "arrival-band": "where the household comes in and leaves",
    "arrival-seen": "the part of it that may be seen",
    "trip": "where a trip at night goes",
    "trip-seen": "the part of the trip that may be noticed",
    "radio-path": "radio path",
    "radio-cost": "what takes most of it",
    "beam": "the sun straight on it, from outside",
    "sunlit": "floor in view that the sun lights",
    "task": "what a camera\u2019s picture is good for there",
    "task-line": "from the camera to where it matters most",
    "climb": "climb from outside",
    "climb-step": "height of a step above the ground",
    "perch": "where an animal gets up, and how high",
    "pet-line": "from the detector to where an animal stands nearest its zones",
    "beaten": "a way on which the design loses",
    "least-detected": "where it is least likely noticed",
    "fault": "place of a finding",
    "suggestion": "where a mend would put it",
}
"""What each sign on a plan means."""

RACE_EVENTS: tuple[tuple[str, str, str], ...] = (
    ("notice", "alarm", "first notice"),
    ("sounder", "alarm", "sounder loud"),
    ("message", "alarm", "message outside"),
    ("reach", "intruder", "control unit reached"),
    ("broken", "intruder", "control unit broken"),
)
"""A word in the name of a part, whose event it is, and how it is written on the strip of time."""
RACE_TOLD: dict[str, tuple[str, str]] = {
    "notice": ("noticed after", "nothing notices"),
    "sounder": ("sounder loud at", "no sounder sounds"),
    "message": ("message out at", "no message leaves"),
    "reach": ("control unit reached at", "the control unit is not reached"),
    "broken": ("control unit broken at", "the control unit is not broken"),
}
"""For each of these events: how it is said with its time, and without one."""
NEVER = "never"
NOT_WATCHED = "no movement detector watches this storey."
NOT_DRAWN = "what its movement detectors see was not asked for, or could not be worked out."
LOCKS_FIRST = "Locks and lights first"
LOCKS_FIRST_WHY = (
    "An alarm tells; it does not hold anybody up. Where an opening is weak, a better lock or pane buys more seconds "
    "than any detector, and a light takes away the dark."
)
HOW_TO_READ = (
    "The range runs from the 5th to the 95th percentile over draws of every uncertain input. "
    "\u201cMoved most by\u201d names the two inputs that shift the value most, by how much, and how each is known."
)
MET_FOLDED = "answers are met over their whole range: how each was worked out"
NOTHING_FOUND = "No rule found a fault."
NO_FINDINGS_ASKED = "No rule was run for this page."
ACTIONS = {
    "move-device": "Move {name}",
    "turn-device": "Turn {name}",
    "add-device": "Add {what} at {name}",
    "remove-device": "Take {name} away",
    "change-behaviour": "Give {name} the behaviour {what}",
    "change-programme": "Change the programme",
    "rename": "Rename {name}",
    "change-device": "Change {name}",
    "change-mount": "Mount {name} otherwise",
    "replace-device": "Replace {name} by {what}",
    "change-lock": "Fit a better {what} at {name}",
    "add-light": "Add a light that comes on by itself at {name}",
    "change-covering": "Change the covering of {name}",
    "keep-shut": "Keep {name} shut while the alarm is set",
    "leave-open": "Leave {name} open at night",
    "move-thing": "Move {name} away",
    "bar-climb": "Make {name} unfit to climb: cut it back, or bar it",
    "change-parts": "Take {name} out of the {what}",
    "add-to-part": "Put {name} into the {what}, too",
    "behave-part-set": "Give {name} the behaviour {what} when part set",
    "tell": "Find out and note {what} of {name}",
    "other": "See to {name}",
}
"""How a mend begins; what changes follows."""

FIELDS: dict[str, str] = {
    "height_m": "height above the floor",
    "offset_m": "distance along its wall",
    "heading_deg": "heading",
    "tilt_deg": "tilt",
    "gap_m": "gap between its parts",
    "abort_delay_s": "abort delay",
    "entry_time_s": "entry time",
    "exit_time_s": "exit time",
    "sounding_time_s": "sounding time",
    "told": "who gets messages:",
    "signal": "for the signal",
    "state": "in the state",
    "electronics_on": "electronics on the",
    "at_m": "place",
    "is_covered_when_home": "covered or off while people are in:",
    "mount": "mounting",
    "swing": "the side it opens to",
    "by": "held by",
    "is_heated_before": "its surface warmed first",
    "check_in_min": "how long a device may stay silent",
    "covering": "covering",
    "cell": "cells:",
    "mask": "a mask over the picture, corners in shares of its width and height from the upper left:",
}
"""Names of fields, as people call them."""

THINGS = {
    "storeys": "storeys", "spaces": "spaces", "walls": "walls", "openings": "doors and windows",
    "open_edges": "open edges", "stairs": "stairs", "fixtures": "fixtures and furniture",
    "outlets": "power and network points", "people": "people", "pets": "pets", "targets": "targets",
    "devices": "devices", "zones": "zones",
}  # fmt: skip
"""The lists of a site, as people call them."""
SINGLES = {
    "name": "the house\u2019s name", "place": "the place", "ground": "the ground", "premises": "the premises",
    "programme": "the programme", "needs": "what is asked for",
}  # fmt: skip
"""What a site has one of, as people call it."""
