"""What was written down on site, in words for papers: what came of a test, its reading and its remark."""

from __future__ import annotations

from collections.abc import Iterable

from wardwright.documents.content.quantities import sentence
from wardwright.works.site_result import SiteResult

EARLIER = "of an earlier revision: {why}"
WRITTEN = "Written down on site: {passed} passed, {failed} not passed, {open} not done{old}."
OLD = ", {many} of an earlier revision, which count for nothing until they are done again"


class Results:
    """What was written down of tests, ready to be looked up by what they are about."""

    def __init__(self, results: Iterable[SiteResult] = ()) -> None:
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
        passed = [one for one in found if one.outcome == "passed" and not one.earlier]
        others = [f"{_part(one.key)}{told_result(one)}" for one in found if one not in passed]
        read = [f"{_part(one.key)}{told_result(one)}" for one in passed if one.reading or one.remark]
        if not found:
            return ""
        counted = [f"{len(passed)} of {len(found)} written down passed"]
        return " ".join(sentence(one) for one in (*counted, *others, *read))

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


def _is_shown(key: str, device: str) -> bool:
    kind, about, *_ = key.split("/")
    return about == device and kind in ("view", "beyond view", "opening", "operation", "shown")


def _part(key: str) -> str:
    """Which walk of a test it is; empty: it is the whole test."""
    walk = key.split("/")[2:]
    return f"{', '.join(part for part in walk if part)}: " if walk else ""
