from __future__ import annotations

from wardwright.documents.content.finding_block import finding_groups
from wardwright.documents.content.names import Names
from wardwright.model.estimate import Estimate
from wardwright.rules.finding import Finding


def test_groups_are_gravest_first_and_not_run_is_a_group_of_its_own(findings: tuple[Finding, ...]) -> None:
    groups = finding_groups(findings[::-1], names=Names())
    assert [group.severity for group in groups] == [
        "must mend",
        "advise",
        "check with the standard",
        "not run",
    ]
    assert [len(group.findings) for group in groups] == [1, 1, 1, 1]


def test_a_finding_says_what_it_is_held_against(findings: tuple[Finding, ...]) -> None:
    (block,) = finding_groups(findings, names=Names({"control-unit": "Hall control unit"}))[0].findings
    assert block.held_against == "3.5 m, held against 5.0 m"
    assert block.subject == "Hall control unit"
    assert block.message.endswith(".")


def test_what_lacks_a_kind_of_device_is_one_line_and_is_counted(findings: tuple[Finding, ...]) -> None:
    not_run = findings[-1].model_copy(update={"severity": "not run"})
    lacking = [
        not_run.model_copy(update={"code": code, "lacks": kind})
        for code, kind in (("WAT102", "water-detector"), ("CAM101", "camera"), ("WAT101", "water-detector"))
    ]
    (group,) = finding_groups((not_run, *lacking), names=Names())
    assert group.count == 4
    assert [block.code for block in group.findings] == [not_run.code]
    assert group.absent == "Cameras (CAM101); water detectors (WAT101, WAT102)."


def test_one_reason_for_many_rules_is_told_once(findings: tuple[Finding, ...]) -> None:
    one = findings[-1].model_copy(update={"severity": "not run"})
    same, other = (
        one.model_copy(update={"code": code, "message": message})
        for code, message in (("ABC101", one.message), ("ABC102", "another reason"))
    )
    (group,) = finding_groups((one, same, other), names=Names())
    assert group.count == 3
    assert [(block.code, block.rule) for block in group.findings] == [
        (f"ABC101, {one.code}", "2 rules"),
        ("ABC102", one.rule),
    ]


def test_what_is_accepted_stands_apart_with_its_reason(findings: tuple[Finding, ...]) -> None:
    lived_with = findings[0].model_copy(update={"accepted": "the owner wants it so"})
    (group,) = finding_groups((lived_with,), names=Names())
    assert (group.severity, group.count) == ("accepted", 1)
    assert group.findings[0].message.startswith(
        f"Accepted: {lived_with.rule}, because the owner wants it so. "
    )


def test_no_finding_has_no_group() -> None:
    assert finding_groups((), names=Names()) == ()


def test_a_gap_is_told_in_millimetres(findings: tuple[Finding, ...]) -> None:
    gap = Estimate(value=0.021, low=0.02, high=0.022, unit="m")
    finding = findings[0].model_copy(update={"estimate": gap, "limit": 0.016})
    (block,) = finding_groups((finding,), names=Names())[0].findings
    assert block.held_against == "21 mm, held against 16 mm"
