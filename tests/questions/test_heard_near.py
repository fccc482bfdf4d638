from wardwright.model.device import Device, WallMount
from wardwright.model.fixture import Fixture
from wardwright.questions.answer import Answer
from wardwright.questions.heard_near import answers_near
from wardwright.rules.sound_heard import INTRUDER_KINDS, sounders
from wardwright.store.catalogue import load_catalogue
from wardwright.store.samples import read_sample

CATALOGUE = load_catalogue()
TERRACE = read_sample("terrace")


def asked(sheet_level: float, height_m: float = 2.2) -> Answer:
    mount = WallMount(wall="bedroom-3-bedroom-2-wall", side="right", offset_m=2.2, height_m=height_m)
    device = Device(id="loud", name="Loud", sheet="sounder-inside", mount=mount)
    cot = Fixture(
        id="cot", name="Cot", storey="first", kind="bed", centre_m=(4.0, 4.9), size_m=(0.6, 1.2), height_m=0.6
    )
    site = TERRACE.model_copy(update={"devices": (device,), "fixtures": (*TERRACE.fixtures, cot)})
    rows = tuple(
        row.model_copy(update={"sounder": row.sounder.model_copy(update={"level_dba": sheet_level})})
        if row.id == "sounder-inside" and row.sounder is not None
        else row
        for row in CATALOGUE.sheets
    )
    catalogue = CATALOGUE.model_copy(update={"sheets": rows})
    (answer,) = answers_near(site, catalogue, sounders(site, catalogue, INTRUDER_KINDS))
    return answer


def test_an_ear_by_a_usual_sounder_stays_under_the_figure() -> None:
    answer = asked(90.0)
    assert answer.verdict == "good"
    assert any(note.startswith("110 dBA: NFPA 72") for note in answer.notes)


def test_over_the_figure_is_named_and_so_is_a_cot_in_the_room() -> None:
    answer = asked(112.0)
    assert answer.verdict == "bad"
    assert answer.notes[0].startswith("over 110 dBA")
    assert any(note.startswith("a cot stands in its room: Cot") for note in answer.notes)


def test_the_margin_mirrors_the_level() -> None:
    answer = asked(100.0)
    levels = [part.estimate for part in answer.parts if part.estimate is not None]
    loudest = max(levels, key=lambda one: one.value)
    assert answer.estimate is not None
    assert answer.estimate.value == 110.0 - loudest.value
    assert answer.estimate.low == 110.0 - loudest.high
    assert answer.estimate.low <= answer.estimate.value <= answer.estimate.high


def test_a_sounder_outside_has_no_ear_near_it() -> None:
    every = sounders(TERRACE, CATALOGUE, INTRUDER_KINDS)
    assert [one.subject_id for one in answers_near(TERRACE, CATALOGUE, every)] == ["hall-control-unit"]
