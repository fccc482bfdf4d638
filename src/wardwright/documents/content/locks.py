"""What holds somebody up or shows them up: locks, panes and lights, told together for the whole house."""

from __future__ import annotations

from wardwright.documents.content.mends import LOCKS_AND_LIGHTS, what_of
from wardwright.documents.content.names import Names
from wardwright.documents.content.quantities import joined, sentence, with_range
from wardwright.documents.content.wording import ACTIONS
from wardwright.questions.answer import Answer
from wardwright.rules.finding import Mend


def locks_and_lights(answers: tuple[Answer, ...], names: Names) -> tuple[str, ...]:
    """The locks and lights that answers ask for, each opening once.

    Parameters
    ----------
    answers : tuple of Answer
        The worst first.
    names : Names
        What people call things.

    Returns
    -------
    tuple of str
        One sentence for openings whose better lock or pane would gain the same, in the answers' order; then
        one for all lights.
    """
    seen: dict[tuple[str, str], Mend] = {}
    for answer in answers:
        for mend in answer.mends:
            if mend.action in LOCKS_AND_LIGHTS:
                seen.setdefault((mend.action, mend.subject), mend)
    groups: dict[tuple[str, str], list[str]] = {}
    lights: list[str] = []
    for mend in seen.values():
        if mend.action == "add-light":
            lights.append(names.of(mend.subject))
            continue
        gain = with_range(mend.gain) if mend.gain is not None else ""
        groups.setdefault((what_of(mend, names), gain), []).append(names.of(mend.subject))
    told = [_lock_sentence(what, gain, whose) for (what, gain), whose in groups.items()]
    if lights:
        told.append(sentence(ACTIONS["add-light"].format(name=joined(lights))))
    return tuple(told)


def _lock_sentence(what: str, gain: str, whose: list[str]) -> str:
    if len(whose) == 1:
        text, who = ACTIONS["change-lock"].format(what=what, name=whose[0]), "it"
    else:
        noun, bracket, rest = what.partition(" (")
        text, who = f"Fit better {noun}s{bracket}{rest} at {joined(whose)}", "each"
    return sentence(f"{text}: {who} would hold longer by {gain}" if gain else text)
