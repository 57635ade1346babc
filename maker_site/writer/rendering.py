"""Views to HTML by the theme's templates: autoescape on, nothing undefined goes by."""

from __future__ import annotations

import hashlib
import os
import shutil
import zlib
from collections.abc import Callable
from contextlib import suppress
from functools import cache
from pathlib import Path
from typing import Any, Final

from babel import Locale
from babel.numbers import format_decimal
from jinja2 import Environment, FileSystemLoader, StrictUndefined, TemplateError, TemplateNotFound, TemplateSyntaxError
from jinja2.bccache import Bucket, BytecodeCache
from jinja2.runtime import Context
from markupsafe import Markup, escape

from maker_site.language import all_of, apart, listed, say, say_forms, say_in, say_n
from maker_site.pages.addresses import relative
from maker_site.pages.marks import caution_icon, control_strip, drawn_once
from maker_site.pages.page import Page
from maker_site.pages.parts import Picture
from maker_site.pages.picture_html import picture_html
from maker_site.records.words import difficulty_said, with_capital
from maker_site.writer.cache_folder import cache_folder
from maker_site.writer.themes import Theme

_SPEECH: Final = {
    each.__name__: each
    for each in (say, say_n, say_in, say_forms, apart, listed, all_of, with_capital, difficulty_said)
}
"""What templates speak with."""


class TemplateProblem(ValueError):
    """A template that can't be rendered: the file, the line, and what is wrong."""


class _Compiled(BytecodeCache):
    """Keeps compiled templates while the process lives, and for the next one in the user's own folder.

    A template is known by its name, its file and its text, so one that was changed is compiled anew; and by the program
    that compiled it. They are kept nowhere else: what is compiled is run, and a site's folder may come from anywhere.
    """

    def __init__(self) -> None:
        self._kept: dict[str, tuple[str, Any]] = {}
        self.program = ""
        """A digest of the program; with none nothing is kept for the next one."""

    def load_bytecode(self, bucket: Bucket) -> None:
        """Give the template as it was compiled before, if its text is the same."""
        text, code = self._kept.get(bucket.key, ("", None))
        if text == bucket.checksum:
            bucket.code = code
            return
        with suppress(OSError, ValueError, TypeError, EOFError):
            data = self._file(bucket).read_bytes()
            if self.program and zlib.crc32(data[4:]).to_bytes(4, "big") == data[:4]:
                bucket.bytecode_from_string(data[4:])
                self._kept[bucket.key] = bucket.checksum, bucket.code

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep the template in the place of what was compiled of another text."""
        self._kept[bucket.key] = bucket.checksum, bucket.code
        if not self.program:
            return
        data, file = bucket.bytecode_to_string(), self._file(bucket)
        with suppress(OSError):
            if not file.parent.is_dir():
                file.parent.mkdir(parents=True, mode=0o700)
                self._sweep(file.parent)
            part = file.with_name(f".{file.name}-{os.getpid()}")
            part.write_bytes(zlib.crc32(data).to_bytes(4, "big") + data)
            part.replace(file)

    def _file(self, bucket: Bucket) -> Path:
        return cache_folder() / f"{_TEMPLATES}{self.program}" / bucket.key

    @staticmethod
    def _sweep(ours: Path) -> None:
        """Remove what other versions of the program compiled."""
        for folder in ours.parent.glob(f"{_TEMPLATES}*"):
            if folder != ours:
                shutil.rmtree(folder, ignore_errors=True)


_TEMPLATES: Final = "templates-"
_COMPILED: Final = _Compiled()


class _Context(Context):
    """Calls what templates call without asking each time whether it wants to be handed the context: nothing does.

    Macros, which would be told of autoescape, take the environment's, which is always on.
    """

    def call(self, called: Callable[..., Any], /, *args: Any, **kwargs: Any) -> Any:
        """Call a function or a macro."""
        kwargs.pop("_block_vars", None)
        kwargs.pop("_loop_vars", None)
        return called(*args, **kwargs)


class _Environment(Environment):
    """What templates are compiled and rendered in."""

    context_class = _Context


class Renderer:
    """Renders the pages of one copy."""

    def __init__(self, theme: Theme, frame: Any, program: str = "") -> None:
        """`program` is a digest of the program that compiles; without it compiled templates are not kept on disk."""
        _COMPILED.program = program
        self._here = ""
        self._files = {f"assets/{_hashed(name, path)}": path for name, path in theme.assets().items()}
        self._names = {name: f"assets/{_hashed(name, path)}" for name, path in theme.assets().items()}
        self._environment = _Environment(
            loader=FileSystemLoader([str(folder) for folder in theme.templates]),
            autoescape=True,
            undefined=StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
            keep_trailing_newline=True,
            extensions=["jinja2.ext.loopcontrols"],
            bytecode_cache=_COMPILED,
            cache_size=-1,
            auto_reload=False,  # where a template has changed, another renderer is made
        )
        self._environment.globals |= {"icon": caution_icon, "control_strip": control_strip}
        self._environment.globals |= _SPEECH
        self._environment.globals |= {
            "frame": frame,
            "to": self._to,
            "asset": self._asset,
            "picture": self._picture,
            "own": _own(frame),
            "prose": _prose(frame),
            "number": _number(frame),
            "english": _english(frame),
        }

    @property
    def assets(self) -> dict[str, Path]:
        """Return the theme's assets by the address that pages link to."""
        return self._files

    def ready(self, copy: str) -> None:
        """Compile the templates of a copy now, so that forks of this process need not."""
        for name in self._environment.list_templates(filter_func=lambda name: name.startswith(f"{copy}/")):
            with suppress(TemplateError):  # told where a page needs it
                self._environment.get_template(name)

    def html(self, page: Page) -> str:
        """Return a page as HTML; a template's fault comes back with its file and line."""
        here = self._here = page.address
        try:
            template = self._environment.get_template(page.template)
            rendered = template.render(
                page=page.view,
                title=page.title,
                description=page.description,
                door=page.door,
                found=page.found,
                here=here,
            )
            return drawn_once(rendered)
        except TemplateNotFound as error:
            raise TemplateProblem(f"the theme has no template “{error.name}”, needed for {here}") from error
        except TemplateSyntaxError as error:
            raise TemplateProblem(f"{error.filename or error.name}, line {error.lineno}: {error.message}") from error
        except TemplateError as error:
            raise TemplateProblem(f"{_where(error, page)}: {error.message} (for {here})") from error

    def _to(self, address: str) -> str:
        return relative(self._here, address)

    def _asset(self, name: str) -> str:
        if name not in self._names:
            raise TemplateProblem(f"the theme has no asset “{name}”, asked for by {self._here}")
        return relative(self._here, self._names[name])

    def _picture(self, shown: Picture, sizes: str = "100vw", *, eager: bool = False) -> Markup:
        return picture_html(shown, self._here, sizes, eager=eager)


def _hashed(name: str, path: Path) -> str:
    """Return an asset's name with a hash of its content in it, so that browsers keep each version apart."""
    digest = hashlib.blake2b(path.read_bytes(), digest_size=4).hexdigest()
    stem, dot, ending = name.rpartition(".")
    return f"{stem}-{digest}{dot}{ending}"


def _own(frame: Any) -> Callable[[str], Markup]:
    """Return what marks the maker's own words: their language where the page has another, their own direction."""
    language = frame.records_language
    if frame.language != language:
        before = Markup('<bdi lang="{}">').format(language)
    elif frame.direction == "rtl":
        before = Markup("<bdi>")
    else:
        return escape
    return lambda words: before + words + Markup("</bdi>") if words else Markup()


def _prose(frame: Any) -> Markup:
    """Return the attributes of an element that holds what the maker wrote, where it may differ from the page."""
    if frame.language != frame.records_language:
        return Markup(' lang="{}" dir="auto"').format(frame.records_language)
    return Markup(' dir="auto"') if frame.direction == "rtl" else Markup()


def _english(frame: Any) -> Markup:
    """Return the attributes of an element that holds what is told in English everywhere."""
    return Markup() if frame.language.partition("-")[0] == "en" else Markup(' lang="en" dir="ltr"')


def _number(frame: Any) -> Callable[[int], str]:
    """Return what writes a count as the shop's locale does."""
    locale = Locale.parse(frame.records_language, sep="-")

    @cache
    def written(count: int) -> str:
        return str(format_decimal(count, locale=locale))

    return written


def _where(error: TemplateError, page: Page) -> str:
    """Return the template's file and line that an error came through last."""
    trace, found = error.__traceback__, page.template
    while trace:
        name = trace.tb_frame.f_code.co_filename
        if name.endswith((".html", ".xml")):
            found = f"{name}, line {trace.tb_lineno}"
        trace = trace.tb_next
    return found
