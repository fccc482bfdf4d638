"""One suite over all rules."""

from __future__ import annotations

import ast
import random
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

from common.houses import CATALOGUE
from common.mending import mended
from common.rule_houses import HOUSES
from common.turning import quarter_turned
from structure.source_tree import PACKAGE, ROOT
from wardwright.model.site import Site
from wardwright.rules.finding import Finding
from wardwright.rules.page import HEADINGS, rule_sections
from wardwright.rules.registry import Rule, faults_of, findings_of
from wardwright.rules.table import RULES

FOLDER = PACKAGE / "rules"
each_rule = pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.code)


def files_of_rules() -> list[Path]:
    return sorted(path for path in FOLDER.glob("*/*.py") if path.name != "__init__.py")


def reordered(site: Site, seed: int) -> Site:
    """The same site with every list in another order."""
    draw = random.Random(seed)  # noqa: S311 - an order for a test, not a secret
    lists = {name: list(value) for name, value in site if isinstance(value, tuple)}
    for items in lists.values():
        draw.shuffle(items)
    return site.model_copy(update={name: tuple(items) for name, items in lists.items()})


def test_table_and_folder_hold_the_same_rules() -> None:
    names = {path.stem for path in files_of_rules()}
    assert names == {rule.name.replace("-", "_") for rule in RULES}
    assert set(HOUSES) == {rule.code for rule in RULES}


@each_rule
def test_a_rule_stands_in_the_file_of_its_name(rule: Rule) -> None:
    (path,) = FOLDER.glob(f"*/{rule.name.replace('-', '_')}.py")
    first = (ast.get_docstring(ast.parse(path.read_text(encoding="utf-8"))) or "").split()[0].rstrip(":")
    assert first == rule.code
    assert rule.check.__name__ == path.stem
    package = (path.parent / "__init__.py").read_text(encoding="utf-8")
    assert f"codes {rule.code[:3]}." in package


@each_rule
def test_every_heading_is_there_and_says_something(rule: Rule) -> None:
    sections = rule_sections(rule)
    assert tuple(heading for heading, _ in sections) == HEADINGS
    assert all(len(text.split()) >= 8 and "----" not in text for _, text in sections)
    assert rule.summary.endswith(".")


@each_rule
def test_it_fires_where_it_should(rule: Rule) -> None:
    found = findings_of(rule, HOUSES[rule.code].fires, CATALOGUE)
    assert any(one.severity != "not run" for one in found)
    for one in found:
        assert (one.code, one.rule) == (rule.code, rule.name)
        assert one.message
        assert one.cure
        assert not one.message.endswith(".")
        assert "\n" not in one.message


@each_rule
def test_without_mends_it_finds_the_same_faults(rule: Rule) -> None:
    kept = ("severity", "subject", "message", "estimate", "limit", "related")
    for site in HOUSES[rule.code][:3]:
        found = [one for one in findings_of(rule, site, CATALOGUE) if one.severity != "not run"]
        faults = faults_of(rule, site, CATALOGUE)
        assert [one.model_dump(include=set(kept)) for one in faults] == [
            one.model_dump(include=set(kept)) for one in found
        ]
        assert rule.unmended is None or not any(one.mends or one.cure for one in faults)


@each_rule
def test_it_is_silent_where_nothing_is_wrong(rule: Rule) -> None:
    assert findings_of(rule, HOUSES[rule.code].silent, CATALOGUE) == ()


@each_rule
def test_it_says_so_where_it_cannot_run(rule: Rule) -> None:
    found = findings_of(rule, HOUSES[rule.code].cannot_run, CATALOGUE)
    assert found
    assert {one.severity for one in found} == {"not run"}
    assert all(one.message and one.cure for one in found)


@each_rule
@pytest.mark.parametrize("seed", [1, 2, 3])
def test_the_order_of_lists_changes_nothing(rule: Rule, seed: int) -> None:
    for site in HOUSES[rule.code][:3]:
        assert findings_of(rule, reordered(site, seed), CATALOGUE) == findings_of(rule, site, CATALOGUE)


@each_rule
def test_a_quarter_turn_of_the_house_changes_nothing(rule: Rule) -> None:
    for site in HOUSES[rule.code][:3]:
        before = findings_of(rule, site, CATALOGUE)
        after = findings_of(rule, quarter_turned(site), CATALOGUE)
        assert [told(one) for one in after] == [told(one) for one in before]
        numbers = [one.estimate.value for one in before if one.estimate is not None]
        turned = [one.estimate.value for one in after if one.estimate is not None]
        assert turned == pytest.approx(numbers, abs=1e-9)


def told(found: Finding) -> object:
    """All that a finding says but its numbers and places."""
    actions = [(mend.action, mend.subject) for mend in found.mends]
    return (found.severity, found.subject, found.message, found.cure, found.limit, actions, found.related)


@each_rule
def test_the_house_is_left_untouched(rule: Rule) -> None:
    site = HOUSES[rule.code].fires
    before = site.model_dump_json()
    findings_of(rule, site, CATALOGUE)
    assert site.model_dump_json() == before


@each_rule
def test_each_mend_makes_its_finding_go_away(rule: Rule) -> None:
    houses = HOUSES[rule.code]
    found = findings_of(rule, houses.fires, CATALOGUE)
    faults = [one for one in found if one.severity != "not run"]
    for one in faults:
        assert bool(one.mends) == houses.is_mend_computed
        for mend in one.mends:
            after = findings_of(rule, mended(houses.fires, mend), CATALOGUE)
            assert one.subject not in {other.subject for other in after}


@each_rule
def test_all_mends_together_leave_nothing(rule: Rule) -> None:
    if not HOUSES[rule.code].is_mend_computed:
        return  # that it carries none is held above
    site = HOUSES[rule.code].fires
    for one in findings_of(rule, site, CATALOGUE):
        for mend in one.mends[:1]:
            site = mended(site, mend)
    assert findings_of(rule, site, CATALOGUE) == ()


def test_the_pages_are_those_of_the_rules() -> None:
    script = ROOT / "scripts" / "build-rule-pages"
    done = subprocess.run(
        [sys.executable, str(script), "--check"], capture_output=True, text=True, check=False
    )
    assert done.returncode == 0, done.stderr


def test_every_source_is_listed() -> None:
    listed = tomllib.loads((PACKAGE / "sources.toml").read_text(encoding="utf-8"))["source"]
    assert {key for rule in RULES for key in rule.sources} <= {row["id"] for row in listed}
