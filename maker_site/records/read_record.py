"""From a tree of text to a frozen record, or to every problem in it.

Inner module of the records room.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from typing import Any, TypeVar, get_args

from pydantic import BaseModel, ValidationError

from maker_site.records.base import Lines, Origin, Part, Record, compact
from maker_site.records.problems import Problem, nearest, quoted
from maker_site.records.shop import Units
from maker_site.records.yaml_text import Place, TextTree, dotted

P = TypeVar("P", bound=Part)
R = TypeVar("R", bound=Record)


def record_from(
    model: type[R], tree: TextTree, file: str, given: Mapping[str, Any], units: Units, *, kind: str
) -> tuple[R | None, list[Problem]]:
    """Return the record of a tree, which knows where it stood, and its problems; see `part_from`."""
    record, problems = part_from(model, tree, file, given, units, kind=kind)
    if record is not None:
        record._origin = Origin(file, Lines(tree.lines))
    return record, problems


def part_from(
    model: type[P], tree: TextTree, file: str, given: Mapping[str, Any], units: Units, *, kind: str
) -> tuple[P | None, list[Problem]]:
    """Return the fields of a tree and their problems; None in place of the fields where there is any problem.

    `given` holds what the file does not say, such as the id; the maker may not write those fields. `kind` is the
    word for such a record in sentences (``a blank``).
    """
    origin = Origin(file, tree.lines)
    problems = list(tree.problems)
    problems += [
        origin.problem((key,), f"“{key}” is not a field of {kind}: it is the file's own name or what lies beside it")
        for key in tree.fields
        if key in given
    ]
    fields = {key: value for key, value in tree.fields.items() if key not in given}
    try:
        part = model.model_validate({**fields, **given}, context={"units": units})
    except ValidationError as error:
        if tree.problems and not tree.fields:  # a file that is no record: what it lacks is not worth a sentence each
            return None, problems
        return None, problems + problems_of(error, model, origin, kind, given)
    return (None if problems else compact(part)), problems


def problems_of(
    error: ValidationError, model: type[BaseModel], origin: Origin, kind: str, given: Collection[str] = ()
) -> list[Problem]:
    """Return the maker's sentences for all that validation found; the `given` fields are not offered to write."""
    return [
        origin.problem(place, _sentence(dict(found), model, place, kind, given))
        for found in error.errors(include_url=False, include_input=False)
        for place in [tuple(found["loc"])]
    ]


def _sentence(found: dict[str, Any], model: type[BaseModel], place: Place, kind: str, given: Collection[str]) -> str:
    match found["type"]:
        case "missing":
            group = dotted(place[:-1])
            return f"“{place[-1]}” is missing{f' in {group}' if group else ''}; {kind} needs it"
        case "extra_forbidden":
            names = [name for name in field_names(_model_at(model, place[:-1])) if name not in given]
            return f"{quoted(str(place[-1]))} is not a field here{nearest(str(place[-1]), names) or _known(names)}"
        case "value_error":
            return str(found["ctx"]["error"])
        case "model_type" | "model_attributes_type":
            names = field_names(_model_at(model, place))
            return f"this should hold fields of its own{_known(names)}"
        case "tuple_type":
            return "this should be a list, one item a line, each begun with a hyphen"
        case _:
            return str(found["msg"])


def _known(names: list[str]) -> str:
    return f"; known are {', '.join(names)}" if names else ""


def field_names(model: type[BaseModel] | None) -> list[str]:
    """Return the names that a maker may write in a group of fields."""
    if model is None:
        return []
    return [info.alias or name for name, info in model.model_fields.items()]


def _model_at(model: type[BaseModel] | None, place: Place) -> type[BaseModel] | None:
    for part in place:
        if model is None or isinstance(part, int):
            continue
        info = next((each for each in model.model_fields.values() if each.alias == part), None)
        model = _model_in(info.annotation) if info else None
    return model


def _model_in(annotation: Any) -> type[BaseModel] | None:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    for argument in get_args(annotation):
        if (found := _model_in(argument)) is not None:
            return found
    return None
