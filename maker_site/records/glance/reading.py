"""Reading a value at a glance by what is said of its field: a reader of text, a list of texts, or a group of fields.

Inner module of the records room.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any, TypeAlias

from maker_site.frozen import frozen
from maker_site.records.glance.unsure import Unsure
from maker_site.records.meanings import plain_text
from maker_site.records.problems import NotReadable


@frozen
class Bare:
    """What figures without a unit are in, and the shop's currency."""

    temperature: Any
    length: Any
    pressure: Any
    currency: str


Reader: TypeAlias = Callable[[str, Bare], Any]
"""Takes a field's text, and what figures without a unit are in."""


@frozen
class Items:
    """A list of texts."""

    split: Callable[[object], object]
    """Takes what is written in one line for a list."""


@frozen
class Group:
    """Fields of their own: how each is read, and which are needed."""

    fields: Mapping[str, Any]
    needed: tuple[str, ...] = ()
    many: bool = False
    """It is a list of such groups."""


def spec_of(specs: Mapping[str, Any], key: str) -> Any:
    """Return how a field is read; raises Unsure where it is none that can be."""
    if key not in specs:
        raise Unsure
    return specs[key]


def read(value: Any, spec: Any, bare: Bare) -> Any:
    """Return what a value means. `spec` is a reader of text, items or a group."""
    if isinstance(spec, Items):
        items = spec.split(value)
        if not isinstance(items, list):
            raise Unsure
        return tuple(_said(item, _plain, bare) for item in items)
    if isinstance(spec, Group):
        if not spec.many:
            return _read_group(value, spec, bare)
        if not isinstance(value, list):
            raise Unsure
        return tuple(_read_group(each, spec, bare) for each in value)
    return _said(value, spec, bare)


def _said(value: Any, reader: Reader, bare: Bare) -> Any:
    if not isinstance(value, str):
        raise Unsure
    try:
        return reader(value, bare)
    except NotReadable:
        raise Unsure from None


def _read_group(value: Any, group: Group, bare: Bare) -> dict[str, Any]:
    if not isinstance(value, dict) or any(key not in value for key in group.needed):
        raise Unsure
    return {key: read(each, spec_of(group.fields, key), bare) for key, each in value.items()}


def _plain(text: str, _: Bare) -> str:
    return plain_text(text)
