"""What is asked and looked at on a survey beyond what a plan holds: a line each to write on."""

from __future__ import annotations

ENQUIRY = (
    "Who asks, how they are reached, date",
    "Why now",
    "Owner, tenant, leaseholder; listed building",
    "What should happen when it sounds",
    "The insurer\u2019s exact words",
    "Alarm there already: age, whose it is, who can programme it",
    "Broadband, mobile networks that work indoors",
    "Decoration or building work planned",
    "Outside our competence: passed on to",
    "Survey on, and who of the household will be there",
)
OUTSIDE = (
    "Seen from the road; windows of neighbours\u2019 bedrooms",
    "Boundary, shared drive or path",
    "Reached by: flat roof, wall, tree, bins, pipe, neighbour\u2019s roof",
    "Break-ins here and next door, and how",
    "Keyholders, and how soon they can be here",
)
TECHNICAL = (
    "Mobile level indoors, by network and room",
    "Where broadband comes in, and what powers it",
    "Radio noise read, where and on what",
    "Spare way, fused connection (looked at, not opened)",
    "Plaster sound; paint age; wallpaper; tile; uPVC; steel",
    "Textured coatings or boards from before 2000",
    "Pipes and cables found near the places chosen",
    "Ground for a ladder at each place outside",
)
