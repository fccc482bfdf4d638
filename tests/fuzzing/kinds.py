"""What may be handed in, kind by kind: whole ones to damage, and the command lines that read them."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from common import dxf_plan
from common.ifc_house import Wish, written
from fuzzing.mutations import damaged_dxf, damaged_ifc, damaged_json, damaged_lines, drawn

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "src" / "wardwright"
GIVEN = ROOT.parent / "shared" / "data"
SMALL = 100_000
"""Of whole ones longer than this only a few are drawn: they take seconds each. [bytes]"""


@dataclass(frozen=True)
class Kind:
    """A way in."""

    name: str
    file: str
    """What a damaged one is called."""
    whole: Callable[[], tuple[bytes, ...]]
    """Those that are in order."""
    damaged: Callable[[bytes, int], bytes]
    """One of them, damaged by a seed."""
    commands: tuple[tuple[str, ...], ...]
    """Command lines that read it, the first of them tried most; FILE and OUT stand for the two paths."""
    is_limited: bool = False
    """Whether the program reads it in a process of its own, which takes seconds."""

    def made(self, seed: int) -> tuple[bytes, tuple[str, ...]]:
        """The damaged input of a seed, and the command line that it is tried with."""
        draw = drawn(self.name, seed)
        small = [one for one in self.whole() if len(one) <= SMALL]
        big = [one for one in self.whole() if len(one) > SMALL]
        one = draw.choice(big) if big and (not small or draw.random() < 0.05) else draw.choice(small)
        command = self.commands[0] if draw.random() < 0.6 else draw.choice(self.commands)
        return self.damaged(one, seed), command


@cache
def documents() -> tuple[bytes, ...]:
    """Site documents: the samples, and the small house that the named bad inputs are made from."""
    files = [*sorted((PACKAGE / "samples").glob("*.json")), ROOT / "tests" / "bad_inputs" / "good.json"]
    return (*(file.read_bytes() for file in files), *_homes())


def _homes() -> tuple[bytes, ...]:
    folder = GIVEN / "plans" / "homes"
    if not folder.is_dir():
        return ()
    from common.plan_homes import read_home  # noqa: PLC0415 - only where the data is

    return tuple(
        read_home(folder / f"{name}.json").text.encode() for name in ("1241_01", "2494_01", "4836_02")
    )


@cache
def notes() -> tuple[bytes, ...]:
    """Notes of whole houses."""
    return tuple(file.read_bytes() for file in sorted((PACKAGE / "samples").glob("*.notes")))


@cache
def sheets() -> tuple[bytes, ...]:
    """Files of rows: those of the catalogue under ids of their own."""
    folder = PACKAGE / "catalogue"
    files = sorted([*folder.glob("*.toml"), *(folder / "devices").glob("*.toml")])
    own = (re.sub(r'(?m)^id = "', 'id = "own-', file.read_text(encoding="utf-8")) for file in files)
    return tuple(text.encode() for text in own)


@cache
def building_files() -> tuple[bytes, ...]:
    """IFC files: small houses written by the tests, and the given ones where they are."""
    wishes = (
        Wish(), Wish(schema="IFC2X3", unit_m=0.001), Wish(turn_deg=30.0, true_north=(0.3, 0.9), gable=True),
        Wish(with_spaces=False), Wish(panels=(("System Panel:glazed", 0.5, 2.0), ("solid", 2.0, 4.0))),
    )  # fmt: skip
    made = tuple(_always_the_same(written(wish)) for wish in wishes)
    return (*made, *(file.read_bytes() for file in sorted((GIVEN / "houses").glob("*.ifc"))))


def _always_the_same(data: bytes) -> bytes:
    """A file without what differs from one writing to the next: ids drawn at random, and the hour."""
    count = iter(range(10**6))
    text = re.sub(r"\('[0-9A-Za-z_$]{22}'", lambda _: f"('{next(count):022d}'", data.decode("latin-1"))
    return re.sub(r"FILE_NAME\(.*?\);", "FILE_NAME('','',(''),(''),'','','');", text).encode("latin-1")


@cache
def drawings() -> tuple[bytes, ...]:
    """DXF drawings: small plans drawn by the tests, and the given one where it is."""
    wishes = (
        dxf_plan.Wish(), dxf_plan.Wish(unit="mm", header=""), dxf_plan.Wish(turn_deg=8.0, in_blocks=True),
        dxf_plan.Wish(with_sizes=False), dxf_plan.Wish(with_names=False, header="", version="R12"),
    )  # fmt: skip
    made = tuple(_without_time(dxf_plan.written(wish)) for wish in wishes)
    return (*made, *(file.read_bytes() for file in sorted((GIVEN / "houses").glob("*.dxf"))))


def _without_time(data: bytes) -> bytes:
    """A drawing without what differs from one writing to the next: hours, and ids drawn at random."""
    text = re.sub(r"(\$(?:TD|TDU|TDUP)\w+\n\s*40\n)[^\n]*", r"\g<1>0.0", data.decode("latin-1"))
    text = re.sub(r"(\$\w*GUID\n\s*2\n)[^\n]*", r"\g<1>{0}", text)
    return re.sub(r"[^\n]* @ \d{4}-\d\d-\d\dT[^\n]*", "when", text).encode("latin-1")


@cache
def note_lines() -> tuple[str, ...]:
    """Every line of notes that there is, those of the manual and of the given houses' kits among them."""
    files = [
        *(PACKAGE / "samples").glob("*.notes"),
        *(ROOT / "tests" / "data_kits").glob("*.notes"),
        ROOT / "docs" / "notes.md",
    ]
    return _lines(files)


@cache
def sheet_lines() -> tuple[str, ...]:
    """Every line of the catalogue."""
    return _lines([*(PACKAGE / "catalogue").rglob("*.toml"), PACKAGE / "sources.toml"])


def _lines(files: Sequence[Path]) -> tuple[str, ...]:
    found = {line for file in files for line in file.read_text(encoding="utf-8").splitlines() if line.strip()}
    return tuple(sorted(found))


def _document(one: bytes, seed: int) -> bytes:
    return damaged_json(one.decode(), drawn("document damage", seed))


def _notes(one: bytes, seed: int) -> bytes:
    return damaged_lines(one.decode(), drawn("notes damage", seed), note_lines())


def _sheet(one: bytes, seed: int) -> bytes:
    return damaged_lines(one.decode(), drawn("sheet damage", seed), sheet_lines())


def _ifc(one: bytes, seed: int) -> bytes:
    return damaged_ifc(one, drawn("ifc damage", seed))


def _dxf(one: bytes, seed: int) -> bytes:
    return damaged_dxf(one, drawn("dxf damage", seed))


KINDS = (
    Kind(
        "document", "site.json", documents, _document,
        (("check", "FILE"), ("ask", "FILE"), ("ask", "FILE", "--json"), ("papers", "FILE", "-o", "OUT")),
    ),
    Kind("notes", "house.notes", notes, _notes, (("intake", "FILE", "-o", "OUT"),)),
    Kind(
        "sheet", "own.toml", sheets, _sheet,
        (("check", "sample:one-room", "--sheet", "FILE"), ("ask", "sample:one-room", "--sheet", "FILE")),
    ),
    Kind(
        "ifc", "house.ifc", building_files, _ifc,
        (("intake", "FILE", "-o", "OUT"), ("intake", "FILE", "--premises", "A", "-o", "OUT")), is_limited=True,
    ),
    Kind(
        "dxf", "plan.dxf", drawings, _dxf,
        (("intake", "FILE", "-o", "OUT"), ("intake", "FILE", "--unit", "inch", "-o", "OUT")), is_limited=True,
    ),
)  # fmt: skip
"""Every kind that is tried; one more way in is one more row."""
