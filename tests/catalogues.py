"""The catalogues of the site's own sentences, brought up to date: `python -m tests.catalogues`.

Gathers every sentence of the program and of the themes, merges them into each `maker-site.po` under
`maker_site/language/catalogues/`, where translations are kept and what nobody says any more is dropped, and compiles
the `.mo` that the program reads. `python -m tests.catalogues --add TAG` begins a language.
"""

from __future__ import annotations

import argparse
import io
from collections.abc import Iterator, Sequence
from functools import cache
from pathlib import Path
from typing import Final

from babel import Locale
from babel.messages import Catalog, Message
from babel.messages.extract import extract_from_dir
from babel.messages.mofile import write_mo
from babel.messages.pofile import read_po, write_po
from babel.plural import to_gettext

from maker_site.language.speech import CATALOGUES, DOMAIN

ROOT: Final = Path(__file__).resolve().parent.parent
KEYWORDS: Final = {"say": None, "say_n": (1, 2), "say_forms": (1, 2), "say_in": ((1, "c"), 2), "marked": None}
"""What is called with a sentence, and which arguments are one: by the numbers that Babel gives them."""
_METHODS: Final = [("**.py", "python"), ("**.html", "jinja2.ext:babel_extract")]
_OPTIONS: Final = {"**.html": {"trim_blocks": "true", "extensions": "jinja2.ext.loopcontrols", "silent": "false"}}
_FOLDERS: Final = ("maker_site", "themes")
_TRANSLATORS: Final = ("Translators:",)
"""How a comment beside a sentence begins that is meant for those who translate it."""
_AS_NO_DATE: Final = ("POT-Creation-Date", "PO-Revision-Date")


def gathered() -> Catalog:
    """Return every sentence that the site says, without translations."""
    found = Catalog(project=DOMAIN, charset="utf-8")
    for file, message, comments, context in _extracted():
        found.add(message, None, [(file, 0)], auto_comments=list(comments), context=context)
    return found


@cache
def _extracted() -> tuple[tuple[str, str | tuple[str, ...], tuple[str, ...], str | None], ...]:
    """Return file, sentence, comments and context of each, once a process: to read all sources takes time."""
    return tuple(
        (f"{folder}/{path}", message, tuple(comments), context)
        for folder in _FOLDERS
        for path, _, message, comments, context in extract_from_dir(
            ROOT / folder, _METHODS, _OPTIONS, KEYWORDS, _TRANSLATORS, strip_comment_tags=True
        )
    )


def catalogue_of(tag: str) -> Catalog:
    """Return a language's catalogue as it stands in its .po file."""
    with po_file(tag).open("rb") as opened:
        return read_po(opened, locale=tag, domain=DOMAIN)


def begun(tag: str) -> Catalog:
    """Return an empty catalogue for a language, with its plural forms by CLDR."""
    locale = Locale.parse(tag)
    made = Catalog(locale=locale, domain=DOMAIN, project=DOMAIN, charset="utf-8", fuzzy=False)
    made.mime_headers = [("Plural-Forms", to_gettext(locale.plural_form))]
    return made


def updated(catalogue: Catalog, sentences: Catalog) -> Catalog:
    """Bring a catalogue up to date: new sentences are empty in it, those that nobody says are gone."""
    catalogue.update(sentences, no_fuzzy_matching=True)
    catalogue.obsolete.clear()
    return catalogue


def po_text(catalogue: Catalog) -> bytes:
    """Return a catalogue as a .po file: sorted, without dates and lines, so that a change shows as what it is."""
    name = catalogue.locale.english_name if catalogue.locale else "New"
    catalogue.header_comment = f"# {name}: what the site says itself."
    for message in catalogue:
        message.locations = sorted(set(message.locations))
        message.flags.discard("python-format")  # “90 % of” is no such thing
    out = io.BytesIO()
    write_po(out, catalogue, width=0, sort_by_file=True, include_lineno=False, ignore_obsolete=True)
    lines = out.getvalue().decode().splitlines(keepends=True)
    unsaid = (
        *_AS_NO_DATE,
        "Project-Id-Version",
        "Report-Msgid-Bugs-To",
        "Last-Translator",
        "Language-Team",
        "Generated",
    )
    return "".join(line for line in lines if not line.startswith(tuple(f'"{each}' for each in unsaid))).encode()


def mo_data(catalogue: Catalog) -> bytes:
    """Return a catalogue as the program reads it; what is not translated is said in English."""
    made = _Undated(locale=catalogue.locale)
    made.told = [("Content-Type", "text/plain; charset=utf-8"), ("Plural-Forms", catalogue.plural_forms)]
    for message in catalogue:
        if message.id and is_whole(message):
            made.add(message.id, message.string, context=message.context)
    out = io.BytesIO()
    write_mo(out, made)
    return out.getvalue()


class _Undated(Catalog):
    """A catalogue whose head has no dates and no makers, so that one text is always compiled to the same bytes."""

    told: Sequence[tuple[str, str]] = ()

    @property
    def mime_headers(self) -> list[tuple[str, str]]:
        """Return the lines of the head."""
        return list(self.told)


def is_whole(message: Message) -> bool:
    """Tell whether a sentence is translated, for every count that the language tells apart."""
    said = message.string
    return all(said) if isinstance(said, tuple | list) else bool(said)


def po_file(tag: str) -> Path:
    """Return where a language's sentences are translated."""
    return CATALOGUES / tag / "LC_MESSAGES" / f"{DOMAIN}.po"


def tags() -> Iterator[str]:
    """Yield the languages that there is a catalogue for."""
    yield from sorted(path.parent.parent.name for path in CATALOGUES.glob(f"*/LC_MESSAGES/{DOMAIN}.po"))


def main() -> None:
    """Bring every catalogue up to date and tell what is still to be translated."""
    asked = argparse.ArgumentParser(description=__doc__.partition("\n")[0] if __doc__ else None)
    asked.add_argument("--add", metavar="TAG", help="a language to begin, such as nl")
    added = asked.parse_args().add
    sentences = gathered()
    if added and not po_file(added).is_file():
        po_file(added).parent.mkdir(parents=True, exist_ok=True)
        po_file(added).write_bytes(po_text(begun(added)))
    for tag in tags():
        text = po_text(updated(catalogue_of(tag), sentences))
        po_file(tag).write_bytes(text)
        found = catalogue_of(tag)
        left = sum(1 for message in found if message.id and not is_whole(message))
        print(f"{tag}: {len(found)} sentences, {left} to be translated")
        po_file(tag).with_suffix(".mo").write_bytes(mo_data(found))


if __name__ == "__main__":
    main()
