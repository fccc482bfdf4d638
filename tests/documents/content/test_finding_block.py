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


def test_no_finding_has_no_group() -> None:
    assert finding_groups((), names=Names()) == ()


def test_a_gap_is_told_in_millimetres(findings: tuple[Finding, ...]) -> None:
    gap = Estimate(value=0.021, low=0.02, high=0.022, unit="m")
    finding = findings[0].model_copy(update={"estimate": gap, "limit": 0.016})
    (block,) = finding_groups((finding,), names=Names())[0].findings
    assert block.held_against == "21 mm, held against 16 mm"
