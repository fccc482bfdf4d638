"""The base of every record, and how each fact says where it came from."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Annotated, Literal, Self, get_args

from pydantic import (
    BaseModel,
    BeforeValidator,
    ConfigDict,
    PlainSerializer,
    StringConstraints,
    WithJsonSchema,
)

from wardwright.model.field_texts import field_texts

if TYPE_CHECKING:
    from pydantic import GetJsonSchemaHandler
    from pydantic.json_schema import JsonSchemaValue
    from pydantic_core import CoreSchema

Basis = Literal["measured", "told", "guessed", "default"]
"""How a fact of a site is known, best first."""

BASES: tuple[Basis, ...] = get_args(Basis)

Id = Annotated[str, StringConstraints(pattern=r"^[a-z0-9][a-z0-9.-]{0,79}$")]
"""Never changes once given; small letters, digits, dots and hyphens."""

Point2 = tuple[float, float]
"""A place on the plan: x, y. [m]"""

Point3 = tuple[float, float, float]
"""A place in the house: x, y, z. [m]"""

Line2 = tuple[Point2, Point2]
"""A straight piece on the plan, from a start to an end. [m]"""

Ring = tuple[Point2, ...]
"""A closed outline on the plan, first corner not repeated. [m]"""


def _pairs(value: object) -> object:
    if isinstance(value, Mapping):
        return tuple(sorted((str(key), basis) for key, basis in value.items()))
    return value


Marks = Annotated[
    tuple[tuple[str, Basis], ...],
    BeforeValidator(_pairs),
    PlainSerializer(dict),
    WithJsonSchema(
        {
            "type": "object",
            "additionalProperties": {"enum": list(BASES)},
            "description": "How each named field is known. A field that is written but not named here was told; "
            "a field that is left out is a default.",
        }
    ),
]


_KEPT_HASH = "kept hash"  # not a field's name, so that it is neither written nor compared


class Record(BaseModel):
    """A frozen record; unknown keys are refused."""

    model_config = ConfigDict(
        frozen=True,
        extra="forbid",
        allow_inf_nan=False,
        ser_json_inf_nan="constants",
    )

    @classmethod
    def __get_pydantic_json_schema__(
        cls, core_schema: CoreSchema, handler: GetJsonSchemaHandler
    ) -> JsonSchemaValue:
        """The schema of the record, with what the docstrings under its fields say."""
        schema = handler(core_schema)
        properties = handler.resolve_ref_schema(schema).get("properties", {})
        for name, text in field_texts(cls).items():
            if name in properties:
                properties[name]["description"] = text
        return schema

    def __eq__(self, other: object) -> bool:
        """Equal content; what is kept beside it, which may be the record itself, does not count."""
        if self is other:
            return True
        if type(self) is not type(other):
            return NotImplemented
        mine, theirs = self.__dict__, other.__dict__
        hashes = {kept[_KEPT_HASH] for kept in (mine, theirs) if _KEPT_HASH in kept}
        if len(hashes) > 1:
            return False
        return all(mine[name] == theirs[name] for name in type(self).__pydantic_fields__)

    def __hash__(self) -> int:
        """The hash of the content, kept: engines look answers up by it again and again."""
        try:
            kept: int = self.__dict__[_KEPT_HASH]
        except KeyError:
            kept = self.__dict__[_KEPT_HASH] = self._hashed()
        return kept

    def _hashed(self) -> int:
        content = map(self.__dict__.__getitem__, type(self).__pydantic_fields__)
        return hash((type(self), *content))

    def __copy__(self) -> Self:
        """A copy that keeps nothing worked out, so that it may be given other content."""
        twin = super().__copy__()
        for name in twin.__dict__.keys() - type(self).__pydantic_fields__.keys():
            del twin.__dict__[name]
        return twin


class Marked(Record):
    """A record whose fields each say how they are known."""

    basis: Marks = ()
    """How each field is known."""

    def __eq__(self, other: object) -> bool:
        """Equal content, known in the same way: a default and the same value told are two things."""
        # Asked of what is no record, the base answers NotImplemented, which is no yes.
        if not isinstance(other, Marked) or super().__eq__(other) is not True:
            return False
        return self.model_fields_set == other.model_fields_set

    __hash__ = Record.__hash__

    def _hashed(self) -> int:
        return hash((super()._hashed(), frozenset(self.model_fields_set)))

    def basis_of(self, field: str) -> Basis:
        """How one field is known.

        Parameters
        ----------
        field : str
            The field's name.

        Returns
        -------
        str
            The basis named for it; `told` if it was written without one; `default` if it was left out.

        Examples
        --------
        >>> class Door(Marked):
        ...     width_m: float = 0.9
        >>> Door().basis_of("width_m"), Door(width_m=0.8).basis_of("width_m")
        ('default', 'told')
        >>> Door(width_m=0.8, basis={"width_m": "measured"}).basis_of("width_m")
        'measured'
        """
        for name, basis in self.basis:
            if name == field:
                return basis
        return "told" if field in self.model_fields_set else "default"
