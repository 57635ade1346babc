"""What is judged at a glance is judged as the kinds of records judge it."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any

import pytest
from pydantic import TypeAdapter, ValidationError

from maker_site.records import Blank, Part, Press, Pressing, Project, Shop, Supply
from maker_site.records.base import Record
from maker_site.records.glance import fields
from maker_site.records.glance.reading import Bare, Group, read
from maker_site.records.glance.unsure import Unsure
from maker_site.records.meanings import key_of
from maker_site.records.shop import Units

BARE = Bare("F", "in", "psi", "GBP")
UNITS = Units(temperature="F", length="in", pressure="psi")
WORDS = (
    *(
        "",
        "slate",
        "Alumnium",
        "200",
        "200 C",
        "400 F",
        "-300 C",
        "190 to 200 C",
        "60 s",
        "1:75",
        "2:30",
        "5 min",
        "1 h",
    ),
    *("0", "3", "007", "100000", "1.5", "yes", "No", "maybe", "2026-04-18", "2026-02-30", "18.4.2026", "medium"),
    *("medium (mark 5)", "40 psi", "gentle", "print up", "face up", "up", "wrapped", "warm", "hot", "air", "flat"),
    *("sublimation", "Sublimation", "vinyl", "blurred; faded", "ghost", "blurred, faded", "pad > paper", "a, b", ">"),
    *(
        "10 mm",
        "10 x 20 cm",
        "round 9 cm",
        "1/2 in",
        "M 0 0 L 9 0 L 9 9 Z",
        "M 0",
        "12.50",
        "£3",
        "3 EUR",
        "5 %",
        "500 %",
    ),
    *(
        "1 kW",
        "400 ml",
        "11 ml/m2",
        "easy",
        "hard",
        "soft",
        "https://example.org/a",
        "example",
        "../up.jpg",
        "photos/a.jpg",
    ),
    *("ink", "packaging", "#1f5673", "navy", "   ", "ﬁne", "½", "１２", "20 pressings", "matt", "C:/a"),
)
KINDS: tuple[tuple[type[Part], Mapping[str, Any], set[str]], ...] = (
    (Pressing, fields.ROW, {"id"}),
    (Project, fields.PROJECT, {"id", "was", "tutorial", "folder photos"}),
    (Blank, fields.BLANK, {"id", "folder pictures"}),
    (Supply, fields.SUPPLY, {"id"}),
)
"""With the fields that are no text of the file, and `was`, which all projects have to agree on."""


@pytest.mark.parametrize(("kind", "specs", "others"), KINDS)
def test_every_field_is_known(kind: type[Part], specs: Mapping[str, Any], others: set[str]) -> None:
    names = {key_of(info.alias or name) for name, info in kind.model_fields.items()}
    assert {*specs} == names - others


def needed_of(kind: type[Part]) -> set[str]:
    return {key_of(info.alias or name) for name, info in kind.model_fields.items() if info.is_required()}


def test_a_row_needs_what_it_needs() -> None:
    assert {*fields.NEEDED} == needed_of(Pressing) - {"id"}


@pytest.mark.parametrize("kind", [Pressing, Project, Blank, Supply, Press, Shop])
def test_every_text_means_the_same(kind: type[Record]) -> None:
    specs = {
        Pressing: fields.ROW,
        Project: fields.PROJECT,
        Blank: fields.BLANK,
        Supply: fields.SUPPLY,
        Press: fields.PRESS,
        Shop: fields.SHOP,
    }[kind]
    _compare(kind, specs)


def _compare(kind: type[Part], specs: Mapping[str, Any]) -> None:
    for name, info in kind.model_fields.items():
        spec = specs.get(key_of(info.alias or name))
        if spec is None:
            continue
        if isinstance(spec, Group):
            inner = next(each for each in _parts(info.annotation))
            assert {*spec.fields} == {key_of(each.alias or key) for key, each in inner.model_fields.items()}
            assert {*spec.needed} == needed_of(inner)
            _compare(inner, spec.fields)
            continue
        annotated: Any = Annotated[(info.annotation, *info.metadata)] if info.metadata else info.annotation
        adapter = TypeAdapter(annotated)
        for word in WORDS:
            seen, understood = _glanced(spec, word), _understood(adapter, word)
            is_foreign = spec is fields.amount and seen == "unsure"  # which is judged by its currency too
            assert seen == understood or is_foreign, (name, word)


def _parts(annotation: Any) -> list[type[Part]]:
    if isinstance(annotation, type) and issubclass(annotation, Part):
        return [annotation]
    return [part for each in getattr(annotation, "__args__", ()) for part in _parts(each)]


def _glanced(spec: Any, word: str) -> str:
    try:
        return repr(read(word, spec, BARE))
    except Unsure:
        return "unsure"


def _understood(adapter: TypeAdapter[Any], word: str) -> str:
    try:
        return repr(adapter.validate_python(word, context={"units": UNITS}))
    except ValidationError:
        return "unsure"
