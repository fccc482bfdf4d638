"""What was written down on site, in words for papers: what came of a test, its reading and its remark."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from wardwright.documents.content.names import Names
from wardwright.documents.content.quantities import sentence
from wardwright.works.site_result import SiteResult

EARLIER = "of an earlier revision: {why}"
WITHOUT_A_ROW = {
    "pet": "let roam",
    "picture": "at the named points",
    "message": "each kind of message by each path",
}
"""Kinds of tests that have no row of their own in the test record, and what is done for them."""
WRITTEN = (
    "Written down on site: {passed} passed, {failed} not passed, {open} not done{old}. "
    "Of what nothing is written down, nothing was done."
)
OLD = ", {many} of an earlier revision, which count for nothing until they are done again"


class Results:
    """What was written down of tests, ready to be looked up by what they are about."""

    def __init__(
        self, results: Iterable[SiteResult] = (), *, walk_named: Callable[[str], str] = lambda _: ""
    ) -> None:
        self._walk_named = walk_named
        self._by_key = {one.key: one for one in results if one.step == "prove"}

    def reading(self, kind: str, about: str) -> str:
        """What was read in one test that holds and was done; empty: nothing was."""
        found = self._by_key.get(f"{kind}/{about}")
        if found is None or found.earlier or found.outcome == "not done":
            return ""
        return found.reading

    def told(self, kind: str, about: str, *, has_reading: bool = False) -> str:
        """What came of one test.

        Parameters
        ----------
        kind, about : str
            The test.
        has_reading : bool, default False
            Whether its reading stands in a cell of its own.

        Returns
        -------
        str
            Empty where nothing was written down.
        """
        found = self._by_key.get(f"{kind}/{about}")
        return "" if found is None else told_result(found, has_reading=has_reading)

    def both(self, kind: str, about: str) -> tuple[str, str]:
        """What was read in one test that holds, and what came of it, for two cells."""
        read = self.reading(kind, about)
        return read, self.told(kind, about, has_reading=bool(read))

    def of_device(self, device: str) -> str:
        """What came of all that is shown of one device: of each opening, operation and walk that is written down."""
        found = [one for key, one in self._by_key.items() if _is_shown(key, device)]
        told = [self._named(one) for one in found if one.reading or one.remark or not _has_passed(one)]
        if len(found) > 1:
            told.insert(0, f"of {len(found)} written down {sum(map(_has_passed, found))} passed")
        elif not told:
            told = [told_result(one) for one in found]
        return " ".join(sentence(one) for one in told)

    def _named(self, one: SiteResult) -> str:
        name = self._walk_named(one.key)
        return f"{name}: {told_result(one)}" if name else told_result(one)

    def counted(self) -> tuple[str, ...]:
        """How many tests came out how, in a sentence; nothing where none was written down."""
        if not self._by_key:
            return ()
        holding = [one for one in self._by_key.values() if not one.earlier]
        many = {
            name: sum(one.outcome == name for one in holding) for name in ("passed", "not passed", "not done")
        }
        old = len(self._by_key) - len(holding)
        told = WRITTEN.format(
            passed=many["passed"],
            failed=many["not passed"],
            open=many["not done"],
            old=OLD.format(many=old) if old else "",
        )
        return (told,)


def told_result(one: SiteResult, *, has_reading: bool = False) -> str:
    """One result in words, without a full stop.

    Parameters
    ----------
    one : SiteResult
        It.
    has_reading : bool, default False
        Whether its reading stands elsewhere.

    Returns
    -------
    str
        What came of it; what was read; the remark; and whether it is of an earlier revision.
    """
    earlier = EARLIER.format(why=one.earlier) if one.earlier else ""
    parts = (one.outcome, "" if has_reading else one.reading, one.remark, earlier)
    return "; ".join(part for part in parts if part)


def told_elsewhere(results: Iterable[SiteResult], names: Names) -> tuple[str, ...]:
    """What was written down of tests that no table of the test record has a row for, and remarks on what was fitted.

    Parameters
    ----------
    results : iterable of SiteResult
        All that was written down.
    names : Names
        What people call things.

    Returns
    -------
    tuple of str
        A sentence each.
    """
    found = []
    for one in results:
        if one.step == "fit" and (one.remark or one.earlier):
            told = told_result(one)
            found.append(
                f"{names.of(one.key)}: {'fitted' + told.removeprefix('done') if one.outcome == 'done' else told}"
            )
        kind, _, about = one.key.partition("/")
        if one.step == "prove" and kind in WITHOUT_A_ROW:
            found.append(f"{names.of(about)}, {WITHOUT_A_ROW[kind]}: {told_result(one)}")
    return tuple(sentence(one) for one in found)


def _is_shown(key: str, device: str) -> bool:
    kind, about, *_ = key.split("/")
    return about == device and kind in ("view", "beyond view", "opening", "operation", "shown")


def _has_passed(one: SiteResult) -> bool:
    return one.outcome == "passed" and not one.earlier
