"""Named bad inputs of every way in but the site document, each as the files that are there and a command line.

A case of notes, of a sheet or of a building file is a good one with one thing changed: what stood there, and what
stands there instead. The messages that they get are in messages.txt.
"""

from __future__ import annotations

import contextlib
import io
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

from common import dxf_plan
from common.bad_office import BOOKS, FIRMS, LISTS
from common.ifc_house import Wish, written
from wardwright.cli.main import main

FOLDER = Path(__file__).parent
INTAKE = ("intake", "house.notes", "-o", "site.json")
INTAKE_IFC = ("intake", "house.ifc", "-o", "site.json")
INTAKE_DXF = ("intake", "plan.dxf", "-o", "site.json")
WITH_FIRM = ("quote", "sample:one-room", "--firm", "firm.toml")
WITH_LIST = ("quote", "sample:one-room", "--prices", "prices.csv")
WITH_BOOK = ("quote", "sample:one-room", "--prices", "prices.xlsx")
WITH_SHEET = ("check", "sample:one-room", "--sheet", "own.toml")


@dataclass(frozen=True)
class Case:
    """One bad input."""

    command: tuple[str, ...]
    files: Mapping[str, Callable[[], bytes]] = field(default_factory=dict)
    """Name and content of what is there."""
    folders: tuple[str, ...] = ()
    """Empty folders that are there."""
    sizes: Mapping[str, int] = field(default_factory=dict)
    """Files of nothing that are there, and how long each is. [bytes]"""


def _changed(base: Callable[[], bytes], old: str, new: str) -> Callable[[], bytes]:
    def made() -> bytes:
        text = base().decode("latin-1")
        assert text.count(old) >= 1, f"{old} is gone from the good one"
        return text.replace(old, new, 1).encode("latin-1")

    return made


def _good(name: str) -> Callable[[], bytes]:
    return (FOLDER / name).read_bytes


# --- notes ----------------------------------------------------------------------------------------------------

NOTES: dict[str, tuple[str, str]] = {
    "a-comma-for-a-point": ("hall 1.8 x 4.6", "hall 1,8 x 4.6"),
    "a-code-in-a-comment": ("storey ground", "# code 4711\nstorey ground"),
    "a-letter-that-is-none": ("storey ground 2.4 high", "storey ground 2.4 \x7f high"),
    "a-quote-left-open": ('house "Cottage"', 'house "Cottage'),
    "a-room-in-the-air": ("kitchen 3.2 x 4.1 against hall east", "kitchen 3.2 x 4.1"),
    "a-room-over-another": ("kitchen 3.2 x 4.1 against hall east", "kitchen 3.2 x 4.1 at 1, 1"),
    "a-room-twice": ("kitchen 3.2 x 4.1", "hall 3.2 x 4.1"),
    "a-room-with-one-length": ("hall 1.8 x 4.6", "hall 1.8"),
    "a-room-without-a-storey": ("storey ground 2.4 high", ""),
    "a-room-of-no-size": ("hall 1.8 x 4.6", "hall 0 x 4.6"),
    "a-house-in-millimetres": ("hall 1.8 x 4.6", "hall 1800 x 4600"),
    "a-word-misspelt": ("window kitchen", "windov kitchen"),
    "a-clause-misspelt": ("sill 0.9", "sil 0.9"),
    "a-unit-misspelt": ("0.8 wide", "80 cn wide"),
    "a-size-given-twice": ("1.2 x 1.1 sill", "1.2 x 1.1, 1.4 x 1.1 sill"),
    "a-door-into-nowhere": ("door kitchen hall", "door kitchen cellar"),
    "a-door-in-no-wall": ("door kitchen hall", "door kitchen kitchen"),
    "a-door-wider-than-its-wall": ("door kitchen hall 0.8 wide", "door kitchen hall 8 wide"),
    "a-window-of-no-size": ("window kitchen north 1.2 x 1.1 sill", "window kitchen north sill"),
    "a-window-inside": ("window kitchen north", "window kitchen west"),
    "two-openings-in-one-place": (
        "as kitchen-window", "as kitchen-window\nwindow kitchen north 1.2 x 1.1 sill 0.9",
    ),
    "an-id-twice": ("as kitchen-door", "as front-door"),
    "a-device-nowhere": ("movement-detector kitchen corner south-east", "movement-detector kitchen"),
    "a-sheet-that-does-not-exist": ("corner south-east 2.2 m", "corner south-east 2.2 m sheet movement-99"),
    "a-device-in-a-door": ("keypad hall east, 2.0 from south", "keypad hall south, 0.9 from west"),
    "a-person-without-a-bed-that-is": ("bed kitchen", "bed attic"),
    "a-pass-of-nobody": ("person mother", "pass uncle night, may kitchen\nperson mother"),
    "a-pass-in-no-part": ("person mother", "pass mother evening, may kitchen\nperson mother"),
    "a-pass-to-no-room": ("person mother", "pass mother night\nperson mother"),
    "a-pass-to-a-room-that-is-not": ("person mother", "pass mother night, not attic\nperson mother"),
    "a-pass-twice": (
        "person mother", "pass mother night, may kitchen\npass mother night, not kitchen\nperson mother",
    ),
    "a-zone-that-behaves-unknown-when-part-set": ("zone 1 entry-exit", "zone 1 entry-exit part-set delayed"),
    "a-thing-outside-to-be-climbed-and-not": (
        "person mother", "outside shed 1 x 1, 2 high, 0 east, 6 north, climbable not-climbable\nperson mother",
    ),
    "a-pet-that-stays-nowhere": ("person mother", "cat stays attic\nperson mother"),
    "two-paces": ("person mother usual", "person mother usual quick"),
    "a-zone-of-nothing": ("zone 1 entry-exit front-contact", "zone 1 entry-exit"),
    "a-device-in-two-zones": ("zone 2 instant kitchen-detector", "zone 2 instant front-contact"),
    "a-zone-number-twice": ("zone 2 instant", "zone 1 instant"),
    "a-zone-of-two-behaviours": ("zone 2 instant", "zone 2 instant entry-route"),
    "times-without-a-number": ("programme entry 30 s", "programme entry soon"),
    "a-country-that-is-none": ("country GB", "country Britain"),
    "a-time-zone-that-is-none": ("country GB", 'time-zone "Europe/Atlantis"'),
    "a-place-off-the-earth": ("latitude 51.5", "latitude 151.5"),
}  # fmt: skip
"""What stood in good.notes, and what stands there instead."""

# --- device sheets --------------------------------------------------------------------------------------------

SHEETS: dict[str, tuple[str, str]] = {
    "not-toml": ("grade = 2", "grade 2"),
    "a-key-misspelt": ("price = ", "prise = "),
    "a-key-twice": ("grade = 2", "grade = 2\ngrade = 2"),
    "a-key-missing": ('kind = "movement-detector"\n', ""),
    "a-kind-that-does-not-exist": ('kind = "movement-detector"', 'kind = "motion-detector"'),
    "a-number-in-quotes": ("reach_m = 12.0", 'reach_m = "12"'),
    "a-number-that-is-none": ("reach_m = 12.0", "reach_m = nan"),
    "a-reach-of-nothing": ("reach_m = 12.0", "reach_m = 0.0"),
    "heights-the-wrong-way-round": ("height_low_m = 2.0", "height_low_m = 2.9"),
    "the-table-of-another-kind": ("[sheet.movement]", "[sheet.contact]\ngap_mm = 15.0\n\n[sheet.movement]"),
    "no-table-of-its-kind": ('kind = "movement-detector"', 'kind = "opening-contact"'),
    "a-table-that-does-not-exist": ("[[sheet]]", "[[device]]"),
    "a-source-that-does-not-exist": ('source = "own"', 'source = "brochure"'),
    "an-id-of-the-catalogue": ('id = "own-detector"', 'id = "movement-12m"'),
    "a-mark-that-does-not-exist": ('mark = "assumption"', 'mark = "sure"'),
    "a-row-of-no-pairs": ("pairs = 9", "pairs = 0"),
}  # fmt: skip
"""What stood in good.toml, and what stands there instead."""

# --- building files -------------------------------------------------------------------------------------------


@cache
def _ifc() -> bytes:
    """A good house, its ids and hour always the same."""
    count = iter(range(10**6))
    text = written(Wish()).decode("latin-1")
    text = re.sub(r"\('[0-9A-Za-z_$]{22}'", lambda _: f"('{next(count):022d}'", text)
    return re.sub(r"FILE_NAME\(.*?\);", "FILE_NAME('','',(''),(''),'','','');", text).encode("latin-1")


def _without(kind: str) -> Callable[[], bytes]:
    """The good house without the lines of one class."""

    def made() -> bytes:
        lines = _ifc().decode("latin-1").splitlines()
        return "\n".join(line for line in lines if f"={kind}(" not in line).encode("latin-1")

    return made


def _turned(pattern: str, new: str | Callable[[re.Match[str]], str]) -> Callable[[], bytes]:
    """The good house with all that fits a pattern written anew."""

    def made() -> bytes:
        text, count = re.subn(pattern, new, _ifc().decode("latin-1"))
        assert count, f"{pattern} is gone from the good one"
        return text.encode("latin-1")

    return made


BUILDINGS: dict[str, Callable[[], bytes]] = {
    "empty": lambda: b"",
    "not-ifc": lambda: b"Dear customer, please find the plan attached.\n",
    "a-web-page": lambda: b"<!DOCTYPE html><html><body>Sign in to fetch the file</body></html>",
    "packed": lambda: b"PK\x03\x04" + b"\0" * 100,
    "cut-off": lambda: _ifc()[: len(_ifc()) // 2],
    "a-schema-that-does-not-exist": _changed(_ifc, "'IFC4'", "'IFC9'"),
    "no-project": _without("IFCPROJECT"),
    "no-storey": _without("IFCBUILDINGSTOREY"),
    "nothing-built": lambda: b"\n".join(
        line for line in _ifc().splitlines() if not re.search(rb"=IFC(SPACE|WALL|SLAB|DOOR|WINDOW)", line)
    ),
    "millimetres-called-metres": _turned(
        r"IFCCARTESIANPOINT\(\((.*?)\)\)",
        lambda found: (
            f"IFCCARTESIANPOINT(({','.join(f'{float(n) * 1000:.1f}' for n in found[1].split(','))}))"
        ),
    ),
    "metres-called-millimetres": _changed(_ifc, ".LENGTHUNIT.,$,", ".LENGTHUNIT.,.MILLI.,"),
    "a-placement-within-itself": _turned(r"#(\d+)=IFCLOCALPLACEMENT\(#\d+,", r"#\1=IFCLOCALPLACEMENT(#\1,"),
    "lines-that-point-nowhere": _without("IFCCARTESIANPOINT"),
}

# --- drawings ---------------------------------------------------------------------------------------------------


@cache
def _dxf() -> bytes:
    return dxf_plan.written()


def _drawn(**wish: object) -> Callable[[], bytes]:
    return lambda: dxf_plan.written(dxf_plan.Wish(**wish))  # type: ignore[arg-type]


DRAWINGS: dict[str, Callable[[], bytes]] = {
    "empty": lambda: b"",
    "not-dxf": lambda: b"Dear customer, please find the plan attached.\n",
    "of-its-programs-own-form": lambda: b"AC1032\0\0\0\0\0" + bytes(200),
    "cut-off": lambda: _dxf()[: len(_dxf()) // 2],
    "no-layer-of-walls": _drawn(wall_layer="LINES"),
    "no-walls": _drawn(walls=()),
    "no-evidence-of-its-unit": _drawn(header="", with_sizes=False, with_names=False, gaps=()),
    "one-wall-only": _drawn(walls=((0.0, 0.0, 9.0, 0.15),), gaps=(), names=()),
}

# --- how commands are written ---------------------------------------------------------------------------------

SITE = {"site.json": _good("good.json")}
HOUSE = {"house.notes": _good("good.notes")}
IFC = {"house.ifc": _ifc}

COMMANDS: dict[str, Case] = {
    "no-command": Case(()),
    "a-command-that-does-not-exist": Case(("askx", "site.json"), SITE),
    "an-option-that-does-not-exist": Case(("ask", "site.json", "--jason"), SITE),
    "no-site": Case(("ask",)),
    "a-question-that-does-not-exist": Case(("ask", "site.json", "99"), SITE),
    "a-question-in-words": Case(("ask", "site.json", "race"), SITE),
    "a-rule-that-does-not-exist": Case(("rule", "MOV999")),
    "no-intruders-at-all": Case(("campaign", "sample:one-room", "--trials", "0")),
    "intruders-without-a-number": Case(("campaign", "sample:one-room", "--trials", "a lot")),
    "a-seed-below-nothing": Case(("campaign", "sample:one-room", "--seed", "-3")),
    "a-campaign-of-a-site-that-is-not-there": Case(("campaign", "site.json")),
    "a-sample-that-does-not-exist": Case(("check", "sample:castle")),
    "a-site-that-is-not-there": Case(("check", "site.json")),
    "a-folder-for-a-site": Case(("check", "site"), folders=("site",)),
    "notes-for-a-site": Case(("check", "house.notes"), HOUSE),
    "a-building-file-for-a-site": Case(("ask", "house.ifc"), IFC),
    "an-empty-site": Case(("check", "site.json"), {"site.json": lambda: b""}),
    "a-picture-for-a-site": Case(("check", "site.json"), {"site.json": lambda: b"\x89PNG\r\n\x1a\n\0\0\0"}),
    "a-site-too-long": Case(("check", "site.json"), sizes={"site.json": 60_000_000}),
    "a-report-that-is-none": Case(
        ("papers", "site.json", "-o", "papers"), {**SITE, "site.report.json": lambda: b"[]"}
    ),
    "papers-onto-a-file": Case(("papers", "site.json", "-o", "site.json"), SITE),
    "demo-onto-a-file": Case(("demo", "-o", "site.json"), SITE),
    "intake-without-an-output": Case(("intake", "house.notes"), HOUSE),
    "intake-of-nothing": Case(INTAKE),
    "intake-of-a-folder": Case(INTAKE, folders=("house.notes",)),
    "intake-of-a-building-file-that-is-not-there": Case(INTAKE_IFC),
    "intake-of-a-folder-called-ifc": Case(INTAKE_IFC, folders=("house.ifc",)),
    "intake-of-a-picture": Case(("intake", "plan.pdf", "-o", "site.json"), {"plan.pdf": lambda: b"%PDF-1.4"}),
    "intake-of-a-site": Case(("intake", "site.json", "-o", "new.json"), SITE),
    "intake-of-notes-too-long": Case(INTAKE, sizes={"house.notes": 3_000_000}),
    "intake-of-a-building-file-too-long": Case(INTAKE_IFC, sizes={"house.ifc": 500_000_001}),
    "intake-into-a-folder-that-is-not-there": Case((*INTAKE[:3], "jobs/site.json"), HOUSE),
    "intake-onto-a-folder": Case((*INTAKE[:3], "jobs"), HOUSE, folders=("jobs",)),
    "intake-below-a-file": Case((*INTAKE[:3], "house.notes/site.json"), HOUSE),
    "intake-over-its-own-input": Case((*INTAKE[:3], "house.notes"), HOUSE),
    "premises-that-do-not-exist": Case((*INTAKE_IFC, "--premises", "Z"), IFC),
    "a-unit-that-does-not-exist": Case((*INTAKE_DXF, "--unit", "cubit"), {"plan.dxf": _dxf}),
    "a-unit-of-notes": Case((*INTAKE, "--unit", "mm"), HOUSE),
    "intake-of-a-drawing-that-is-not-there": Case(INTAKE_DXF),
    "premises-of-a-drawing": Case((*INTAKE_DXF, "--premises", "A"), {"plan.dxf": _dxf}),
    "premises-of-notes": Case((*INTAKE, "--premises", "A"), HOUSE),
    "extra-notes-that-are-not-there": Case((*INTAKE, "--notes", "kit.notes"), HOUSE),
    "a-sheet-that-is-not-there": Case(WITH_SHEET),
    "a-folder-for-a-sheet": Case(WITH_SHEET, folders=("own.toml",)),
    "a-sheet-too-long": Case(WITH_SHEET, sizes={"own.toml": 2_000_000}),
}
"""Command lines that cannot be right, and what lies there when they are given."""


@cache
def cases() -> dict[str, Case]:
    """Every case by its name, which begins with its way in."""
    notes, sheet = _good("good.notes"), _good("good.toml")
    return {
        **{
            f"notes/{name}": Case(INTAKE, {"house.notes": _changed(notes, *edit)})
            for name, edit in NOTES.items()
        },
        "notes/not-utf-8": Case(INTAKE, {"house.notes": lambda: notes() + "Küche".encode("latin-1")}),
        "notes/not-text": Case(INTAKE, {"house.notes": lambda: notes() + b"\0\0"}),
        "notes/nothing": Case(INTAKE, {"house.notes": lambda: b"\n# nothing yet\n"}),
        **{
            f"sheet/{name}": Case(WITH_SHEET, {"own.toml": _changed(sheet, *edit)})
            for name, edit in SHEETS.items()
        },
        "sheet/not-utf-8": Case(WITH_SHEET, {"own.toml": lambda: sheet() + b"# \xfc"}),
        "sheet/nested-lists": Case(WITH_SHEET, {"own.toml": lambda: sheet() + b"a = " + b"[" * 5000}),
        **{f"ifc/{name}": Case(INTAKE_IFC, {"house.ifc": made}) for name, made in BUILDINGS.items()},
        **{f"dxf/{name}": Case(INTAKE_DXF, {"plan.dxf": made}) for name, made in DRAWINGS.items()},
        **{f"firm/{name}": Case(WITH_FIRM, {"firm.toml": made}) for name, made in FIRMS.items()},
        **{f"prices/{name}": Case(WITH_LIST, {"prices.csv": made}) for name, made in LISTS.items()},
        **{f"prices/{name}": Case(WITH_BOOK, {"prices.xlsx": made}) for name, made in BOOKS.items()},
        **{f"command/{name}": case for name, case in COMMANDS.items()},
    }


@dataclass(frozen=True)
class Told:
    """What came of a case."""

    status: int
    said: str
    """On the error stream, without the program's name."""
    printed: str
    changed: tuple[str, ...]
    """What was written or changed where it was tried."""


def told(case: Case, folder: Path) -> Told:
    """Try a case in an empty folder, the current one: paths in messages are then short and always the same."""
    for name in case.folders:
        (folder / name).mkdir()
    for name, made in case.files.items():
        (folder / name).write_bytes(made())
    for name, size in case.sizes.items():
        with (folder / name).open("wb") as file:
            file.truncate(size)
    before = _states(folder)
    printed, said = io.StringIO(), io.StringIO()
    with contextlib.redirect_stdout(printed), contextlib.redirect_stderr(said):
        status = main(case.command)
    after = _states(folder)
    differing = {name for name, _ in before.items() ^ after.items()}
    return Told(status, said.getvalue(), printed.getvalue(), tuple(sorted(differing)))


def _states(folder: Path) -> dict[str, tuple[int, int]]:
    found = ((path, path.stat()) for path in folder.rglob("*"))
    return {
        path.relative_to(folder).as_posix(): (0 if path.is_dir() else stat.st_size, stat.st_mtime_ns)
        for path, stat in found
    }


HEAD = "# Each named bad input, and the exact message it gets; FILE stands for the path of a site document."


def table() -> dict[str, str]:
    """Name and message of each, as they are kept."""
    lines = (FOLDER / "messages.txt").read_text(encoding="utf-8").splitlines()
    rows = [line for line in lines if line and not line.startswith("#")]
    return {name: message.strip() for name, message in zip(rows[::2], rows[1::2], strict=True)}


def page(messages: Mapping[str, str]) -> str:
    """The page of messages.txt."""
    blocks = (f"{name}\n    {message}\n" for name, message in sorted(messages.items()))
    return f"{HEAD}\n\n" + "\n".join(blocks)
