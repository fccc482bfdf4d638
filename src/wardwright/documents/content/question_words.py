"""What each question is called in papers and in the app."""

from __future__ import annotations

QUESTION_SHORT = {
    1: "The race",
    2: "Place of the control unit",
    3: "Entry and exit time",
    4: "Zone behaviour",
    5: "Undetected walk",
    6: "Radio",
    8: "Trips at night",
    9: "Sun, heat and headlights",
    11: "What it sees",
    12: "One thing lost",
    13: "What is heard",
    14: "Reach from outside",
    15: "Batteries",
    16: "Work and price",
    17: "Pets",
    18: "Fire and water distances",
    19: "What a camera shows",
    20: "What changed",
}
"""A short name for each question that is answered; the long one is in the table of questions."""
QUESTION_HEADINGS = {
    1: "The race from",
    2: "Better places for",
    3: "Entry and exit time at",
    4: "Zone behaviour of",
    5: "Undetected walk from",
    6: "Radio of",
    8: "At night, part set:",
    9: "What disturbs",
    11: "What is seen by",
    12: "Without",
    13: "What is heard:",
    14: "The climb to",
    15: "The battery of",
    16: "What the job takes:",
    17: "Pets before",
    18: "Distances of",
    19: "What is shown by",
    20: "What changed in",
}
"""How the heading of an answer begins; its subject follows."""
