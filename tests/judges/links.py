"""What a page points at: every link and picture is there, and nothing is loaded from elsewhere."""

import re
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

# Attributes of the HTML Living Standard that hold an address; those of srcset hold several.
ADDRESS_ATTRIBUTES = (
    "href",
    "xlink:href",
    "src",
    "poster",
    "data",
    "action",
    "formaction",
    "cite",
    "background",
)
# Links that a reader follows; everything else is fetched as the page is drawn, unless it is only named.
FOLLOWED = {
    ("a", "href"),
    ("area", "href"),
    ("blockquote", "cite"),
    ("q", "cite"),
    ("ins", "cite"),
    ("del", "cite"),
}
NAMED_ONLY = {"canonical", "alternate", "license", "author", "next", "prev", "help", "search", "me"}
CSS_ADDRESS = re.compile(r"""(?:url\(\s*|@import\s+)(["']?)([^"')\s;]+)\1""")


@dataclass(frozen=True)
class Pointer:
    """An address met in a page or a style sheet."""

    address: str
    line: int
    what: str
    """The element and attribute that hold it."""
    fetched: bool
    """Whether it is loaded as the page is drawn, rather than followed by the reader."""


@dataclass
class Reader(HTMLParser):
    """Gathers a page's pointers and the ids that a fragment can name."""

    pointers: list[Pointer] = field(default_factory=list)
    ids: set[str] = field(default_factory=set)
    _in_style: bool = False

    def __post_init__(self) -> None:
        super().__init__(convert_charrefs=True)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        values = {name: value or "" for name, value in attrs}
        self._in_style = tag == "style"
        if "id" in values:
            self.ids.add(values["id"])
        if tag == "a" and "name" in values:
            self.ids.add(values["name"])
        for name, value in values.items():
            if name in ADDRESS_ATTRIBUTES:
                named = tag == "link" and set(values.get("rel", "").split()) & NAMED_ONLY
                self._note(value, tag, name, fetched=(tag, name) not in FOLLOWED and not named)
            elif name in ("srcset", "imagesrcset"):
                for candidate in filter(None, map(str.strip, value.split(", "))):
                    self._note(candidate.split()[0], tag, name, fetched=True)
            elif "url(" in value:
                self._note_css(value, tag, name)
        if tag == "meta" and values.get("http-equiv", "").lower() == "refresh":
            self._note(values.get("content", "").partition("=")[2], tag, "content", fetched=False)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)

    def handle_endtag(self, tag: str) -> None:
        self._in_style = False

    def handle_data(self, data: str) -> None:
        if self._in_style:
            self._note_css(data, "style", "text")

    def _note(self, address: str, tag: str, name: str, *, fetched: bool) -> None:
        self.pointers.append(Pointer(address.strip(), self.getpos()[0], f"{tag} {name}", fetched))

    def _note_css(self, text: str, tag: str, name: str) -> None:
        for found in CSS_ADDRESS.finditer(text):
            self._note(found[2], tag, name, fetched=True)


def read_page(page: Path) -> Reader:
    """Read a page's pointers and ids."""
    reader = Reader()
    reader.feed(page.read_text(encoding="utf-8"))
    reader.close()
    return reader


def read_style(sheet: Path) -> list[Pointer]:
    """Read the addresses in a style sheet, with their lines."""
    text = sheet.read_text(encoding="utf-8")
    return [
        Pointer(found[2], text.count("\n", 0, found.start()) + 1, "style sheet", fetched=True)
        for found in CSS_ADDRESS.finditer(text)
    ]


def broken(copy: Path) -> list[str]:
    """List what is wrong with the pointers of one copy: its folder is all that a reader has.

    Wrong are a file that is not there, a fragment that its page does not have, a link to a folder (on a disk
    that is a list of files, no page), a link out of the copy, an absolute path, and anything that is loaded
    from elsewhere as the page is drawn.
    """
    pages = {page.resolve(): read_page(page) for page in copy.rglob("*.html")}
    found = []
    for page, read in sorted(pages.items()):
        found += [
            _told(page, copy, pointer, fault)
            for pointer in read.pointers
            if (fault := _fault(pointer, page, copy, pages))
        ]
    for sheet in sorted(copy.rglob("*.css")):
        found += [
            _told(sheet.resolve(), copy, pointer, fault)
            for pointer in read_style(sheet)
            if (fault := _fault(pointer, sheet.resolve(), copy, pages))
        ]
    return found


def _told(file: Path, copy: Path, pointer: Pointer, fault: str) -> str:
    return f"{file.relative_to(copy.resolve())}:{pointer.line}: {pointer.what} {pointer.address!r} {fault}"


def _fault(pointer: Pointer, file: Path, copy: Path, pages: dict[Path, Reader]) -> str | None:
    parts = urlsplit(pointer.address)
    if parts.scheme == "data":
        return None if pointer.fetched else "is a data: link to follow"
    if parts.scheme in ("http", "https", "mailto", "tel", "sms") or parts.netloc:
        return "is loaded from elsewhere" if pointer.fetched or not parts.scheme else None
    if parts.scheme:
        return "has a scheme that no page of ours needs"
    if parts.path.startswith(("/", "\\")):
        return "is an absolute path"
    if not parts.path and not parts.fragment:
        return "leads nowhere"
    target = (file.parent / unquote(parts.path)).resolve() if parts.path else file
    if not target.is_relative_to(copy.resolve()):
        return "leads out of the copy"
    if not target.is_file():
        return "leads to a folder" if target.is_dir() else "is not there"
    if parts.fragment and target in pages and unquote(parts.fragment) not in pages[target].ids | {"top"}:
        return "names a fragment that its page does not have"
    return None
