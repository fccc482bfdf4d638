"""What is wrong with a record that was read, in plain words: where, what, and what to do."""

from __future__ import annotations

import types
from collections.abc import Mapping, Sequence
from typing import Annotated, Any, NamedTuple, Union, get_args, get_origin

from pydantic import BaseModel, ValidationError

from wardwright.model.wording import label, short, shown, suggestion

_Steps = tuple[int | str, ...]

_ID_RULE = "small letters, digits, dots and hyphens, beginning with a letter or digit, at most 80 of them"


class Complaint(NamedTuple):
    """One fault of a record, in plain words."""

    where: str
    """The place in words, such as `openings[3] "kitchen window" (window-2)`."""
    what: str
    """The fault, without a full stop."""
    cure: str
    """What to do about it, without a full stop."""


def complaints(error: ValidationError, *, raw: object, root: type[BaseModel]) -> tuple[Complaint, ...]:
    """Say in plain words what a failed reading found.

    Parameters
    ----------
    error : ValidationError
        What the failed reading raised.
    raw : object
        The plain data that was read: mappings, lists, text, numbers.
    root : type of BaseModel
        The record it was read as.

    Returns
    -------
    tuple of Complaint
        One for each fault, unknown keys first; a key that is missing because it is misspelt is named once.
    """
    found = [_complaint(one, raw=raw, root=root) for one in error.errors(include_url=False)]
    meant = {(c.where, c.what.rpartition("did you mean ")[2]) for c in found if "did you mean " in c.what}
    found = [
        c for c in found if (c.where, c.what.removeprefix("key ").removesuffix(" is missing")) not in meant
    ]
    return tuple(sorted(found, key=lambda c: "is not known" not in c.what))


def _complaint(one: Any, *, raw: object, root: type[BaseModel]) -> Complaint:  # noqa: ANN401 - pydantic's own mapping
    kind: str = one["type"]
    steps: _Steps = one["loc"]
    if kind == "extra_forbidden":
        return _unknown_key(str(steps[-1]), where=_where(steps[:-1], raw), known=_keys(root, steps[:-1]))
    holder, key = _split(steps)
    where = _where(holder, raw)
    if kind == "missing":
        if isinstance(steps[-1], int):
            return Complaint(where, f"'{_last_key(steps)}' has too few entries", f"Give it {steps[-1] + 1}")
        return Complaint(where, f"key '{key}' is missing", f"Add '{key}'")
    if key == "basis" and kind == "tuple_type":
        kind = "dict_type"
    if key == "country":
        what = f"'country' is {shown(one['input'])}, which is no country code"
        return Complaint(where, what, "Use its two capital letters, such as GB")
    what, cure = _fault(kind, context=one.get("ctx", {}), value=one["input"])
    return Complaint(where, f"'{key}' {what}" if key else f"the document {what}", cure)


def _last_key(steps: _Steps) -> str:
    return next((s for s in reversed(steps) if isinstance(s, str)), "")


def _split(steps: _Steps) -> tuple[_Steps, str]:
    """The steps to the record that holds a key, and the key with the places inside its lists."""
    last = max((i for i, s in enumerate(steps) if isinstance(s, str)), default=-1)
    if last < 0:
        return (), ""
    key = str(steps[last])
    places = "" if key == "basis" else "".join(f"[{s}]" for s in steps[last + 1 :])
    return steps[:last], key + places


def _unknown_key(key: str, *, where: str, known: Sequence[str]) -> Complaint:
    near = suggestion(key, known)
    what = f"key '{short(key)}' is not known"
    if near is not None:
        return Complaint(where, f"{what}; did you mean '{near}'", f"Write '{near}', or take the key out")
    listed = ", ".join(known) if known else "none"
    return Complaint(where, what, f"Take it out; the keys known here are {listed}")


_BOUNDS = {
    "greater_than": ("more than", "gt"),
    "greater_than_equal": ("at least", "ge"),
    "less_than": ("less than", "lt"),
    "less_than_equal": ("at most", "le"),
}
_EXPECTED = {
    "string_type": "text in quotes",
    "float_type": "a number",
    "float_parsing": "a number",
    "int_type": "a whole number",
    "int_from_float": "a whole number",
    "int_parsing": "a whole number",
    "bool_type": "true or false",
    "bool_parsing": "true or false",
    "tuple_type": "a list in square brackets",
    "list_type": "a list in square brackets",
    "dict_type": "an object in braces",
    "model_type": "an object in braces",
    "model_attributes_type": "an object in braces",
    "finite_number": "an ordinary number",
}


def _fault(kind: str, *, context: Mapping[str, Any], value: object) -> tuple[str, str]:
    """The fault and its cure, the key that they are about being named before them."""
    if kind in _BOUNDS:
        words, name = _BOUNDS[kind]
        limit = f"{words} {context[name]:g}"
        return f"is {value}, but must be {limit}", f"Give a number that is {limit}"
    if kind in _EXPECTED:
        return f"should be {_EXPECTED[kind]}, but is {shown(value)}", f"Write {_EXPECTED[kind]}"
    fault = f"cannot be used: it is {shown(value)}", "See the published schema"
    match kind:
        case "string_pattern_mismatch":
            pattern = str(context["pattern"])
            rule = _ID_RULE if "a-z0-9" in pattern else f"text of the form {pattern}"
            fault = f"is {shown(value)}, which cannot be used here", f"Use {rule}"
        case "literal_error":
            fault = _one_of(str(context["expected"]), value)
        case "union_tag_invalid" | "union_tag_not_found":
            tags = "'wall', 'ceiling', 'opening' or 'free'"
            fault = "does not say what it is fixed on", f"Give it an 'on' that is one of {tags}"
        case "decimal_parsing" | "decimal_type":
            fault = f"is {shown(value)}, which is no number", "Write a plain number such as 41.50"
        case "decimal_max_places":
            fault = f"is {value}, which has too many decimals", f"Give it {context['decimal_places']} at most"
        case "too_short":
            fault = (
                f"has {context['actual_length']} entries, but needs {context['min_length']} or more",
                "Add what is missing",
            )
        case "too_long":
            fault = f"has more than {context['max_length']} entries", "Take out what is too much"
    return fault


def _one_of(expected: str, value: object) -> tuple[str, str]:
    known = [word.strip(" '") for word in expected.replace(" or ", ", ").split(",")]
    near = suggestion(value, known) if isinstance(value, str) else None
    hint = f"; did you mean '{near}'" if near else ""
    return f"is {shown(value)}, which is not one of the words allowed{hint}", f"Use one of {expected}"


def _where(steps: _Steps, raw: object) -> str:
    """The record at the end of the steps, in words."""
    words: list[str] = []
    here = raw
    previous: int | str = ""
    for step in steps:
        if isinstance(here, Mapping) and isinstance(step, str) and step in here and previous != "mount":
            here = here[step]
        elif isinstance(step, int) and isinstance(here, Sequence) and step < len(here):
            here = here[step]
            if isinstance(previous, str) and isinstance(here, Mapping):
                words.append(label(previous, step, here))
        elif previous != "mount":
            here = None
        # After `mount` comes the name of its kind, which is no key of the document.
        is_kind = previous == "mount" and step in ("wall", "ceiling", "opening", "free")
        previous = "" if is_kind else step
    if not words:
        words = [s for s in steps if isinstance(s, str)]
    return ", ".join(words) if words else "the document"


def _bare(annotation: Any) -> list[Any]:  # noqa: ANN401 - type annotations have no common type
    """The plain members of an annotation: wrappers, None and unions opened."""
    origin = get_origin(annotation)
    if origin is Annotated:
        return _bare(get_args(annotation)[0])
    if origin in (Union, types.UnionType):
        return [b for arg in get_args(annotation) if arg is not type(None) for b in _bare(arg)]
    return [annotation]


def _keys(root: type[BaseModel], steps: _Steps) -> tuple[str, ...]:
    """Keys that are known at a place, found by walking the records' own annotations."""
    here: list[Any] = [root]
    for step in steps:
        following: list[Any] = []
        for kind in here:
            if isinstance(kind, type) and issubclass(kind, BaseModel):
                if isinstance(step, str) and step in kind.model_fields and len(here) == 1:
                    following += _bare(kind.model_fields[step].annotation)
                elif "on" in kind.model_fields and kind.model_fields["on"].default == step:
                    following.append(kind)
            elif get_origin(kind) is tuple:
                arguments = get_args(kind)
                following += _bare(arguments[0] if isinstance(step, int) else kind)
        here = following
    return tuple(
        dict.fromkeys(
            name
            for kind in here
            if isinstance(kind, type) and issubclass(kind, BaseModel)
            for name in kind.model_fields
        )
    )
