"""Frozen records of plain fields: what `dataclass(frozen=True, slots=True)` makes, without its work at start-up.

The standard decorator writes and compiles seven functions for each class, which takes half a millisecond; there are
hundreds of classes, and one command makes values of few of them. Here `__init__` is compiled when the first value is
made, and the rest needs no compiling. `fields`, `replace`, `asdict` and `is_dataclass` take these for dataclasses. A
record that needs `field(…)`, an order or `__post_init__` is a dataclass of the standard library.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import Field, FrozenInstanceError, dataclass
from operator import attrgetter
from typing import Any, Final, NoReturn, TypeVar, dataclass_transform

T = TypeVar("T")
_NOT_OF_SLOTS: Final = ("__dict__", "__weakref__")
"""What a class has only while it has no slots."""


@dataclass_transform(frozen_default=True)
def frozen(plain: type[T]) -> type[T]:
    """Return the class with its annotated names as fields, in their order; its values are never changed."""
    own = {name: value for name, value in plain.__dict__.items() if name not in _NOT_OF_SLOTS}
    names = tuple(own.get("__annotations__", ()))
    if any(isinstance(own.get(name), (Field, list, dict, set)) for name in names) or "__post_init__" in own:
        raise TypeError(f"{plain.__qualname__} needs dataclasses.dataclass")
    defaults = {name: own.pop(name) for name in names if name in own}
    made = {
        "__slots__": names,
        "__match_args__": names,
        "__dataclass_fields__": _Fields(plain),
        "__init__": _compiled_when_called(names, defaults),
        "__setattr__": _refuse_to_set,
        "__delattr__": _refuse_to_delete,
        **_compared_by(_values_of(names)),
        "__repr__": _shown,
    }
    with_slots: type[T] = type(plain.__name__, plain.__bases__, {**made, **own})
    return with_slots


class _Fields:
    """The fields as the standard library tells them, made when somebody asks."""

    def __init__(self, plain: type) -> None:
        self._plain = plain

    def __get__(self, value: object, record: type) -> dict[str, Field[Any]]:
        standard: Any = dataclass(init=False, repr=False, eq=False)(self._plain)
        found: dict[str, Field[Any]] = standard.__dataclass_fields__
        type.__setattr__(record, "__dataclass_fields__", found)
        return found


def _compiled_when_called(names: tuple[str, ...], defaults: dict[str, Any]) -> Callable[..., None]:
    def first(self: Any, *values: Any, **named: Any) -> None:
        record = type(self)
        record.__init__ = _init(record, names, defaults)
        record.__init__(self, *values, **named)

    return first


def _init(record: type, names: tuple[str, ...], defaults: dict[str, Any]) -> Callable[..., None]:
    """Compile what puts the fields into their slots, past `__setattr__`, which refuses."""
    scope = {f"_set_{name}": record.__dict__[name].__set__ for name in names}
    scope |= {f"_usual_{name}": value for name, value in defaults.items()}
    takes = ", ".join(["self", *(f"{name}=_usual_{name}" if name in defaults else name for name in names)])
    puts = "; ".join(f"_set_{name}(self, {name})" for name in names) or "pass"
    exec(f"def __init__({takes}): {puts}", scope)
    compiled: Callable[..., None] = scope["__init__"]
    compiled.__qualname__ = f"{record.__qualname__}.__init__"
    return compiled


def _values_of(names: tuple[str, ...]) -> Callable[[object], tuple[Any, ...]]:
    if len(names) > 1:
        return attrgetter(*names)
    return lambda record: tuple(getattr(record, name) for name in names)


def _compared_by(values: Callable[[object], tuple[Any, ...]]) -> dict[str, Callable[..., Any]]:
    """Return what compares, and what takes apart for a copy or a pickle, by the values of all fields."""

    def equal(self: object, other: object) -> bool:
        return values(self) == values(other) if other.__class__ is self.__class__ else NotImplemented

    def hashed(self: object) -> int:
        return hash(values(self))

    def taken_apart(self: object) -> tuple[type, tuple[Any, ...]]:
        return self.__class__, values(self)

    return {"__eq__": equal, "__hash__": hashed, "__reduce__": taken_apart}


def _shown(self: Any) -> str:
    fields = ", ".join(f"{name}={getattr(self, name)!r}" for name in self.__match_args__)
    return f"{self.__class__.__qualname__}({fields})"


def _refuse_to_set(self: object, name: str, value: object) -> NoReturn:
    raise FrozenInstanceError(f"cannot assign to field {name!r}")


def _refuse_to_delete(self: object, name: str) -> NoReturn:
    raise FrozenInstanceError(f"cannot delete field {name!r}")
