from __future__ import annotations

import io
import re
import subprocess
import sys
from pathlib import Path

import pytest

from common.dxf_plan import written as drawn
from common.ifc_house import Wish, written
from wardwright.errors import IntakeError, Stopped
from wardwright.intake.dxf.reading import read_dxf
from wardwright.intake.ifc.reading import read_ifc
from wardwright.store import limited
from wardwright.store.given_files import GivenFile
from wardwright.store.limited import read_dxf_limited, read_ifc_limited


@pytest.fixture
def house(tmp_path: Path) -> Path:
    path = tmp_path / "house.ifc"
    path.write_bytes(written(Wish(gable=True)))
    return path


def test_the_child_gives_what_reading_here_gives(house: Path) -> None:
    assert read_ifc_limited(house, "A") == read_ifc(house.read_bytes(), where="house.ifc", premises="A")


def test_a_fault_keeps_its_words(house: Path) -> None:
    with pytest.raises(IntakeError, match='no space is called "Z"') as caught:
        read_ifc_limited(house, "Z")
    assert caught.value.where == "house.ifc, premises"


def test_a_broken_file_is_refused_by_name(house: Path) -> None:
    house.write_bytes(house.read_bytes()[:3000])
    with pytest.raises(IntakeError, match="ends before its last line") as caught:
        read_ifc_limited(house)
    assert caught.value.where == "house.ifc"


def test_a_missing_file_is_refused(tmp_path: Path) -> None:
    with pytest.raises(IntakeError, match="cannot be opened"):
        read_ifc_limited(tmp_path / "none.ifc")


def test_it_is_stopped_when_its_time_is_up(house: Path) -> None:
    with pytest.raises(IntakeError, match=r"longer than 0\.05 s and was stopped"):
        read_ifc_limited(house, seconds=0.05)


@pytest.mark.skipif(sys.platform == "win32", reason="this system has no limit on memory")
def test_it_is_stopped_when_it_takes_too_much_memory(house: Path) -> None:
    with pytest.raises(IntakeError, match=r"more than 150 MB of memory"):
        read_ifc_limited(house, megabytes=150)


def shapes_within_shapes(levels: int) -> bytes:
    """A house one of whose shapes stands for ten, each of which stands for ten, and so on: small on the disk."""
    text = written().decode()
    context = re.search(r"#(\d+)=IFCGEOMETRICREPRESENTATIONCONTEXT", text)
    shape = re.search(r"#\d+=IFCSHAPEREPRESENTATION\(#\d+,'Body','SweptSolid',\((#\d+)\)\);", text)
    assert context is not None
    assert shape is not None
    lines = [
        "#9000=IFCCARTESIANPOINT((0.,0.,0.));",
        "#9001=IFCAXIS2PLACEMENT3D(#9000,$,$);",
        "#9002=IFCCARTESIANTRANSFORMATIONOPERATOR3D($,$,#9000,$,$);",
    ]
    item = shape[1]
    for n in range(9010, 9010 + 10 * levels, 10):
        ten = ",".join([item] * 10)
        lines += [
            f"#{n}=IFCSHAPEREPRESENTATION(#{context[1]},'Body','MappedRepresentation',({ten}));",
            f"#{n + 1}=IFCREPRESENTATIONMAP(#9001,#{n});",
            f"#{n + 2}=IFCMAPPEDITEM(#{n + 1},#9002);",
        ]
        item = f"#{n + 2}"
    body, end, rest = text.replace(shape[0], shape[0].replace(f"({shape[1]})", f"({item})")).rpartition(
        "ENDSEC;"
    )
    return "\n".join([body, *lines, end + rest]).encode()


def test_shapes_within_shapes_are_stopped(tmp_path: Path) -> None:
    path = tmp_path / "house.ifc"
    path.write_bytes(shapes_within_shapes(1))
    assert read_ifc_limited(path)[0].spaces
    path.write_bytes(shapes_within_shapes(10))
    assert path.stat().st_size < 50_000
    with pytest.raises(IntakeError, match=r"longer than 3 s and was stopped|MB of memory"):
        read_ifc_limited(path, seconds=3.0)


def test_a_reader_broken_by_the_file_is_not_called_a_want_of_memory() -> None:
    done = subprocess.CompletedProcess([], -8, b"", b"")
    with pytest.raises(IntakeError, match=r"broke the reader \(signal 8\)\. Export") as caught:
        limited._answer(done, "house.ifc", 2000)
    assert "memory" not in str(caught.value)


def test_a_file_that_was_handed_in_is_read_like_one_on_the_disk(house: Path) -> None:
    with house.open("rb", buffering=0) as content:
        content.read(100)
        given = GivenFile("house.ifc", content)
        assert read_ifc_limited(given, "A") == read_ifc_limited(house, "A")
        with pytest.raises(Stopped):
            read_ifc_limited(given, is_stopped=lambda: True)


def test_a_drawing_is_read_in_the_same_way(tmp_path: Path) -> None:
    plan = tmp_path / "plan.dxf"
    plan.write_bytes(drawn())
    assert read_dxf_limited(plan) == read_dxf(io.BytesIO(plan.read_bytes()), where="plan.dxf")
    assert read_dxf_limited(plan, "inch")[1].read[0] == "unit: inches, as told; the header says inches"
    with pytest.raises(IntakeError, match=r"longer than 0\.05 s and was stopped"):
        read_dxf_limited(plan, seconds=0.05)
    plan.write_bytes(b"no drawing")
    with pytest.raises(IntakeError, match="not a DXF file") as caught:
        read_dxf_limited(plan)
    assert caught.value.where == "plan.dxf"


def test_the_parent_loads_neither_library() -> None:
    code = (
        "import sys, wardwright.store.limited; sys.exit(bool({'ifcopenshell', 'ezdxf'} & set(sys.modules)))"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
