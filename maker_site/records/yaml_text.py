"""YAML read as text with positions: no scalar changes its meaning, no key stands twice.

Inner module of the records room.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache
from typing import Final, TypeAlias

import yaml

from maker_site.frozen import frozen
from maker_site.records.meanings import key_of
from maker_site.records.problems import Problem, quoted

Place: TypeAlias = tuple[str | int, ...]
"""Where a value stands in a record: keys and positions from the top."""
Tree: TypeAlias = "dict[str, Tree] | list[Tree] | str"

_LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
_USUAL_TAGS: Final = ("str", "null", "bool", "int", "float", "timestamp", "merge", "value", "seq", "map")
_DEEPEST: Final = 12
_TOO_DEEP: Final = "fields are nested too deep"


@frozen
class TextTree:
    """A file's mapping as text, and the line of each value."""

    fields: dict[str, Tree]
    lines: Mapping[Place, int]
    problems: tuple[Problem, ...]


def read_yaml(text: str, file: str) -> TextTree:
    """Read the one mapping of a file; what is wrong with its form comes back as problems, all that can be found."""
    try:
        node = yaml.compose(text, Loader=_LOADER)
    except yaml.YAMLError as error:
        return TextTree({}, {}, (_syntax_problem(error, text, file),))
    except RecursionError:  # where only the loader in Python is there: the one in C has a limit of its own
        return TextTree({}, {}, (Problem(file, 0, "", _TOO_DEEP),))
    if node is None:
        return TextTree({}, {(): 1}, ())
    reading = _Reading(file)
    tree = reading.tree(node, ())
    if not isinstance(tree, dict):
        reading.tell((), 1, "the file should hold fields, one a line, like “name: Slate coaster”")
        return TextTree({}, {}, tuple(reading.problems))
    return TextTree(tree, reading.lines, tuple(reading.problems))


class _Reading:
    def __init__(self, file: str) -> None:
        self.file = file
        self.lines: dict[Place, int] = {}
        self.problems: list[Problem] = []
        self.seen: set[int] = set()

    def tell(self, place: Place, line: int, message: str) -> None:
        self.problems.append(Problem(self.file, line, dotted(place), message))

    def tree(self, node: yaml.Node, place: Place) -> Tree:
        line = self.lines.setdefault(place, node.start_mark.line + 1)  # a field's line is its name's
        if id(node) in self.seen:
            self.tell(place, line, "this repeats another part by an alias (*); write it out instead")
            return ""
        if len(place) > _DEEPEST:
            self.tell(place, line, _TOO_DEEP)
            return ""
        if (sign := node.tag.removeprefix("tag:yaml.org,2002:")) not in _USUAL_TAGS:
            self.tell(
                place, line, f"{quoted(sign)} was read as a tag of YAML; a value that begins with “!” wants quotes"
            )
            return ""
        if isinstance(node, yaml.ScalarNode):
            plain_nothing = not node.style and node.value in ("~", "null")
            return "" if plain_nothing else str(node.value)
        self.seen.add(id(node))
        if isinstance(node, yaml.SequenceNode):
            return [self.tree(child, _within(place, index)) for index, child in enumerate(node.value)]
        return self._mapping(node, place)

    def _mapping(self, node: yaml.Node, place: Place) -> dict[str, Tree]:
        found: dict[str, Tree] = {}
        for key_node, value_node in node.value:
            line = key_node.start_mark.line + 1
            if not isinstance(key_node, yaml.ScalarNode):
                self.tell(place, line, "a field's name should be plain words")
                continue
            key = key_of(str(key_node.value))
            inner = _within(place, key)
            if (first := self.lines.get(inner)) is not None:
                self.tell(inner, line, f"{quoted(key)} is written twice, first in line {first}; keep one of them")
                continue
            self.lines[inner] = line
            value = self.tree(value_node, inner)
            if value not in ("", [], {}):
                found[key] = value
        return found


@lru_cache(maxsize=1024)
def _within(place: Place, part: str | int) -> Place:
    """Return the place of a part of what stands at a place."""
    return (*place, part)


def dotted(place: Place) -> str:
    """Return a place as a maker reads it: ``bought 2: count`` for the second lot's count."""
    words: list[str] = []
    for part in place:
        if isinstance(part, int) and words:
            words[-1] = f"{words[-1]} {part + 1}"
        else:
            words.append(str(part))
    return ": ".join(words)


def _syntax_problem(error: yaml.YAMLError, text: str, file: str) -> Problem:
    if isinstance(error, yaml.reader.ReaderError):
        line = text.encode()[: error.position].count(b"\n") + 1  # the loader in C counts bytes
        return Problem(file, line, "", f"the file holds a character that is not text (code {error.character:#x})")
    if not isinstance(error, yaml.MarkedYAMLError) or not (mark := error.problem_mark or error.context_mark):
        return Problem(file, 0, "", "the file can't be read as YAML")
    line = mark.line + 1
    if error.problem == "but found another document":
        return Problem(file, line, "", "a second record begins here with “---”; a file holds one")
    what = f"the file can't be read as YAML: {error.problem}"
    written = [*text.splitlines(), *("",) * line][mark.line]
    if re.match(r"\s*\t", written):
        what += "; use spaces, not tabs, at the start of a line"
    elif written.strip():
        what += f", near {quoted(written)}; a value wants quotes where “: ” or “#” is in it or a sign begins it"
    return Problem(file, line, "", what)
