"""The whole workshop, read."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from maker_site.frozen import frozen
from maker_site.records.article import Article
from maker_site.records.blank import Blank
from maker_site.records.outlines import whole_of
from maker_site.records.press import Press
from maker_site.records.pressing import Pressing
from maker_site.records.problems import Problem, Severity
from maker_site.records.project import Project
from maker_site.records.shop import Shop
from maker_site.records.supply import Supply


@frozen
class Workshop:
    """All records of one content folder, each kind by its id in order of ids."""

    root: Path
    shop: Shop
    blanks: Mapping[str, Blank]
    presses: Mapping[str, Press]
    supplies: Mapping[str, Supply]
    projects: Mapping[str, Project]
    pressings: tuple[Pressing, ...]
    """Oldest first; of one day, in the order of file and line."""
    articles: Mapping[str, Article]
    about: str | None
    """Markdown."""

    def method_of(self, project: Project) -> str:
        """Return how a project's picture gets onto its blank."""
        return project.method or self.blanks[project.blank].method

    def whole_project(self, name: str) -> Project:
        """Return a project with its asides; see `outlines`."""
        return whole_of(self.projects, name)

    def whole_blank(self, name: str) -> Blank:
        """Return a blank with its asides; see `outlines`."""
        return whole_of(self.blanks, name)

    def project_folder(self, project: Project) -> Path:
        """Return the folder of a project's files."""
        return self.root / "projects" / project.id


@frozen
class Findings:
    """What came of reading: the workshop, when there is no error, and every problem."""

    workshop: Workshop | None
    problems: tuple[Problem, ...]

    @property
    def errors(self) -> tuple[Problem, ...]:
        """The problems that keep the site from being made."""
        return tuple(problem for problem in self.problems if problem.severity is Severity.ERROR)
