"""What must not be found in a copy, by its class: patterns that hold for every house, and this house's own words."""

from __future__ import annotations

import re
from collections.abc import Iterator

from wardwright.documents.content.discretion import WITHHELD
from wardwright.documents.content.schedule import room_name
from wardwright.model.catalogue import Catalogue
from wardwright.model.device import kind_words
from wardwright.model.site import Site

DAYS = re.compile(r"\b\d{1,2}\s+[A-Z][a-z]+\s+\d{4}\b|\b\d{4}-\d{2}-\d{2}\b")
"""The only long numbers that a customer's copy has."""
PATTERNS = {
    "a time, a length, an angle or a share": re.compile(
        r"\d\s*(?:s|sec|secs|seconds?|min|minutes?|hours?|m|metres?|mm|cm|m\u00b2|m2|\u00b0|deg|degrees|%)(?!\w)"
    ),
    "a number with decimals": re.compile(r"\d[.,]\d"),
    "a code": re.compile(r"\d{4,}"),
    "an answer's own words": re.compile(
        r"\b(?:undetected|blind|in hand|reached|broken at|abort delay|entry time|exit time|coordinates?|heading)\b",
        re.IGNORECASE,
    ),
    "a drawing": re.compile(r"viewBox|<path|<svg", re.IGNORECASE),
}
ONLY_FOR_THE_CLIENT = {
    "what is not protected": re.compile(
        r"not (?:noticed|watched|protected)|unwatched|unprotected|quickly broken|better (?:lock|pane)|a light that",
        re.IGNORECASE,
    )
}


def leaks(
    text: str, site: Site, catalogue: Catalogue, *, is_open: bool, own: tuple[str, ...] = ()
) -> tuple[str, ...]:
    """What a text tells that its class of copy must not, each with the place; `own` is what it may tell."""
    for words in sorted(filter(None, own), key=len, reverse=True):
        text = re.sub(rf"(?<![\d.]){re.escape(words)}(?![.]?\d)", "", text)
    return tuple(_found(text, site, catalogue, is_open=is_open))


def _found(text: str, site: Site, catalogue: Catalogue, *, is_open: bool) -> Iterator[str]:
    names = {site.name} | {thing.name for field in THINGS for thing in getattr(site, field)}
    own = sorted(names, key=len, reverse=True)
    bare = DAYS.sub("", text)
    for name in own:  # a room may be called `Bed 4.1`: its own name is no secret
        bare = bare.replace(name, "")
    chosen = PATTERNS | (ONLY_FOR_THE_CLIENT if is_open else {})
    for what, pattern in chosen.items():
        yield from (f"{what}: {match.group()!r}" for match in pattern.finditer(bare))
    for group in (site.people, site.pets, site.targets):
        yield from (f"household: {one.name}" for one in group if holds(text, one.name))
    for device in site.devices:
        kind = catalogue.sheet(device.sheet).kind
        if kind not in WITHHELD:
            continue
        if device.name.casefold() != kind_words(kind) and holds(text, device.name):
            yield f"place of what is withheld: {device.name}"
        room = room_name(site, device)
        for line in text.splitlines():
            if holds(line, kind_words(kind)) and holds(line, room):
                yield f"place of what is withheld: {line!r}"


THINGS = ("spaces", "openings", "devices", "zones")


def holds(text: str, words: str) -> bool:
    return re.search(rf"(?<!\w){re.escape(words.casefold())}(?!\w)", text.casefold()) is not None
