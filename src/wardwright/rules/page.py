"""The text of a rule, taken from its own docstring: the page, the help and the report use the same words."""

from __future__ import annotations

import inspect
import textwrap

from wardwright.rules.registry import Rule

HEADINGS = (
    "What it checks",
    "Why it matters",
    "How to put it right",
    "What it cannot know",
)
"""Every rule has these, in this order."""


def rule_sections(rule: Rule) -> tuple[tuple[str, str], ...]:
    """Take the text of a rule apart.

    Parameters
    ----------
    rule : Rule
        The rule.

    Returns
    -------
    tuple of (str, str)
        Heading and text of each section in the order written, lines joined into paragraphs; the parts of the
        docstring that speak of arguments are left out.
    """
    sections: list[tuple[str, str]] = []
    lines = (inspect.getdoc(rule.check) or "").splitlines()
    for number, line in enumerate(lines):
        if line not in HEADINGS:
            continue
        body = []
        for following in lines[number + 1 :]:
            if following and not following.startswith(" "):
                break
            body.append(following)
        paragraphs = textwrap.dedent("\n".join(body)).strip().split("\n\n")
        text = "\n\n".join(" ".join(paragraph.split()) for paragraph in paragraphs)
        sections.append((line, text))
    return tuple(sections)
