"""Reading a content folder: every record, every problem, nothing changed."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import partial
from pathlib import Path
from typing import TypeVar

from pydantic import ValidationError

from maker_site.records.article import Article, ArticleHead
from maker_site.records.blank import Blank
from maker_site.records.content_folder import ContentFolder, pictures_in
from maker_site.records.crosscheck import crosscheck
from maker_site.records.press import Press
from maker_site.records.pressing import Pressing
from maker_site.records.problems import Problem, quoted
from maker_site.records.project import Project
from maker_site.records.read_log import read_log
from maker_site.records.read_record import R, part_from, record_from
from maker_site.records.remembered import Remembered
from maker_site.records.shop import Shop, Units
from maker_site.records.supply import Supply
from maker_site.records.uncollected import uncollected
from maker_site.records.workshop import Findings, Workshop
from maker_site.records.yaml_text import TextTree, read_yaml

V = TypeVar("V")


@uncollected()
def load(root: Path, remembered: Remembered | None = None, *, across: bool = True) -> Findings:
    """Read the content folder `root`; all problems come back together, sorted by file and line.

    `remembered` spares a reading what the one before it understood already, and is told what each record was read from.
    Whether what a record names exists is looked at unless not `across`: for records that were found right before.
    """
    if not root.is_dir():
        return Findings(None, (Problem("", 0, "", f"there is no folder {quoted(str(root))}"),))
    folder = ContentFolder(root, remembered)
    folder.question_strangers()
    shop = _unit(folder, "shop.yaml", None, lambda: _shop(folder))
    units = shop.units if shop else Units()
    blanks = _records(folder, Blank, "blanks", "a blank", units, inner="blank.yaml")
    presses = _records(folder, Press, "presses", "a press", units)
    supplies = _records(folder, Supply, "supplies", "a supply", units)
    projects = _projects(folder, units)
    articles = _unit(folder, "articles", units, lambda: _articles(folder, units))
    logs = _press_logs(folder, units)
    about = _unit(folder, "about.md", None, lambda: _about(folder))
    if shop is None:
        return Findings(None, tuple(sorted(folder.problems)))
    pressings = folder.remembered.memo("pressings", tuple(logs.values()), lambda: _in_order(logs.values()))
    workshop = Workshop(root, shop, blanks, presses, supplies, projects, pressings, articles, about)
    failed = {problem.file for problem in folder.problems}
    problems = [*folder.problems, *(crosscheck(workshop, folder, failed, logs) if across else ())]
    findings = Findings(workshop, tuple(sorted(problems)))
    return Findings(None, findings.problems) if findings.errors else findings


def _unit(folder: ContentFolder, place: str, made_of: object, read: Callable[[], V]) -> V:
    return folder.remembered.unit(place, made_of, folder.problems, read)


def _about(folder: ContentFolder) -> str | None:
    path = folder.root / "about.md"
    return folder.text(path) if folder.holds(path) else None


def _shop(folder: ContentFolder) -> Shop | None:
    path = folder.root / "shop.yaml"
    if not folder.holds(path):
        folder.tell("shop.yaml", "there is no shop.yaml in this folder; write one with “name” and “currency” in it")
        return None
    text = folder.text(path)
    if text is None:
        return None
    tree = read_yaml(text, "shop.yaml")
    shop, problems = record_from(Shop, tree, "shop.yaml", {"id": "shop"}, _own_units(tree), kind="a shop")
    folder.problems += problems
    return shop


def _own_units(shop: TextTree) -> Units:
    """Return the units that the shop's own bare numbers are in; what is wrong with them is said with the shop."""
    try:
        return Units.model_validate(shop.fields.get("units", {}))
    except ValidationError:
        return Units()


def _record(
    folder: ContentFolder, model: type[R], path: Path, given: dict[str, object], units: Units, kind: str
) -> R | None:
    text = folder.text(path)
    if text is None:
        return None
    file = folder.name(path)

    def read() -> tuple[R | None, list[Problem]]:
        return record_from(model, read_yaml(text, file), file, given, units, kind=kind)

    record, problems = folder.remembered.value(file, (text, sorted(given.items()), units), read)
    folder.problems += problems
    return record


def _records(
    folder: ContentFolder, model: type[R], where: str, kind: str, units: Units, inner: str | None = None
) -> dict[str, R]:
    found: dict[str, R] = {}

    def read(record_id: str, path: Path) -> R | None:
        if not folder.holds(path):
            folder.tell(folder.name(path.parent), f"there is no {path.name} in this folder")
            return None
        given: dict[str, object] = {"id": record_id}
        if inner and path.name == inner:
            given["folder pictures"] = tuple(pictures_in(path.parent))
        return _record(folder, model, path, given, units, kind)

    for record_id, file in _listed(folder, where, lambda: folder.records(where, inner)):
        place = file.removesuffix(f"/{inner}")
        record = _unit(folder, place, units, partial(read, record_id, folder.root / file))
        if record is not None:
            found[record_id] = record
    return found


def _listed(
    folder: ContentFolder, where: str, read: Callable[[], Iterable[tuple[str, Path]]]
) -> Sequence[tuple[str, str]]:
    """Return what `read` lists of a folder: ids and the paths of their files from the content folder."""

    def listed() -> tuple[tuple[str, str], ...]:
        return tuple((name, path.relative_to(folder.root).as_posix()) for name, path in read())

    return folder.remembered.unit(where, None, folder.problems, listed, use="list", lists=True)


def _projects(folder: ContentFolder, units: Units) -> dict[str, Project]:
    found: dict[str, Project] = {}
    for project_id, file in _listed(folder, "projects", lambda: folder.records("projects", "project.yaml")):
        read = partial(_project, folder, project_id, file, units)
        project = _unit(folder, f"projects/{project_id}", units, read)
        if project is not None:
            found[project_id] = project
    return found


def _project(folder: ContentFolder, project_id: str, file: str, units: Units) -> Project | None:
    path = folder.root / file
    if path.parent.parent != folder.root / "projects" or not folder.holds(path):
        home = f"projects/{project_id}"
        folder.tell(home, f"there is no project.yaml in this folder; a project is {home}/project.yaml")
        return None
    given: dict[str, object] = {"id": project_id, "folder photos": _folder_photos(path.parent)}
    write_up = path.parent / "tutorial.md"
    if folder.holds(write_up):
        text = folder.text(write_up)
        given["tutorial"] = text if text is not None else ""
    else:
        given["tutorial"] = None
    return _record(folder, Project, path, given, units, "a project")


def _folder_photos(home: Path) -> tuple[str, ...]:
    return tuple(f"photos/{name}" for name in pictures_in(home / "photos"))


def _articles(folder: ContentFolder, units: Units) -> dict[str, Article]:
    found: dict[str, Article] = {}
    heads = dict(folder.records("articles"))
    for article_id, path in folder.records("articles", ending=".md"):
        head_file = heads.pop(article_id, None)
        head = _article_head(folder, head_file, units) if head_file else ArticleHead()
        text = folder.text(path)
        if text is None:
            continue
        folder.remembered.value(folder.name(path), (text, head), lambda: None)
        title, body = split_title(text)
        if title is None:
            sentence = "the article has no title; begin it with a line like “# Reading the paper”"
            folder.tell(folder.name(path), sentence, line=1)
        elif head is not None:
            found[article_id] = Article(id=article_id, title=title, text=body, head=head)
    for stray, path in heads.items():
        folder.tell(folder.name(path), f"there is no {stray}.md beside it")
    return found


def _article_head(folder: ContentFolder, path: Path, units: Units) -> ArticleHead | None:
    text = folder.text(path)
    if text is None:
        return None
    file = folder.name(path)
    head, problems = part_from(ArticleHead, read_yaml(text, file), file, {}, units, kind="an article")
    folder.problems += problems
    return head


def split_title(text: str) -> tuple[str | None, str]:
    """Return the first heading of a Markdown text, when it begins with one, and the rest.

    Empty lines stand where the heading was, so that every other line keeps its number.
    """
    lines = text.split("\n")
    at = next((number for number, line in enumerate(lines) if line.strip()), 0)
    mark, *words = lines[at].split() or [""]
    if mark != "#" or not words:
        return None, text
    if len(words) > 1 and not words[-1].strip("#"):
        words.pop()  # the closing marks of a heading are not part of it
    return " ".join(words), "\n".join(["" for _ in lines[: at + 1]] + lines[at + 1 :])


def _press_logs(folder: ContentFolder, units: Units) -> dict[str, list[Pressing]]:
    """Return the rows of each file of the log."""

    def read(file: str) -> list[Pressing]:
        path = folder.root / file
        text = folder.text(path)
        if text is None:
            return []
        pressings, problems = read_log(text, folder.name(path), units, folder.remembered)
        folder.problems += problems
        return pressings

    def named() -> Iterator[tuple[str, Path]]:
        return ((folder.name(path), path) for path in folder.files("press-log", ".csv"))

    files = _listed(folder, "press-log", named)
    return {name: _unit(folder, name, units, partial(read, file)) for name, file in files}


def _in_order(logs: Iterable[Iterable[Pressing]]) -> tuple[Pressing, ...]:
    """Return the rows of all files; of one day, in the order of file and line."""
    return tuple(sorted((row for rows in logs for row in rows), key=lambda row: row.date))
