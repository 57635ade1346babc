"""What a make puts into the public copy: with an address, without one, drafts, renamed records, paid links."""

import re
from collections.abc import Callable, Mapping
from html import unescape
from pathlib import Path
from xml.etree import ElementTree

import pytest
from click.testing import CliRunner

from maker_site.cli import main
from tests.small_workshop import FILES, SHOP, write_workshop

ATOM = "{http://www.w3.org/2005/Atom}"
SHARED = FILES["projects/harbour/project.yaml"]
WITH_ADDRESS = {
    "shop.yaml": f"{SHOP}address: https://a.example/shop\n",
    "projects/harbour/project.yaml": SHARED,
}
Make = Callable[[Mapping[str, str | bytes | None]], Path]


@pytest.fixture
def make(tmp_path: Path) -> Make:
    """Make a small workshop with these files changed, and give its public copy; again and again, if wanted."""

    def made(changed: Mapping[str, str | bytes | None]) -> Path:
        content = write_workshop(tmp_path / "content", changed)
        result = CliRunner().invoke(main, ["make", "--content", str(content), "--out", str(tmp_path / "site")])
        assert result.exit_code == 0, result.output
        return tmp_path / "site" / "public"

    return made


def files(folder: Path) -> set[str]:
    return {path.relative_to(folder).as_posix() for path in folder.rglob("*") if path.is_file()}


def test_without_an_address_there_is_nothing_that_needs_one(make: Make) -> None:
    public = make({})
    assert {"feed.xml", "sitemap.xml", "robots.txt", "CNAME"} & files(public) == set()
    assert not (public / "social").exists()
    page = (public / "tutorials/harbour.html").read_text()
    assert not any(each in page for each in ("canonical", "og:", "ld+json", "atom+xml"))
    assert 'rel="icon"' in page
    assert {"404.html", "search.html", "search/words.js", "icons/shop.svg"} <= files(public)


def test_with_one_everything_names_it(make: Make) -> None:
    public = make(WITH_ADDRESS)
    assert {"feed.xml", "sitemap.xml", "robots.txt"} <= files(public)
    assert "CNAME" not in files(public)
    page = (public / "tutorials/harbour.html").read_text()
    assert '<link rel="canonical" href="https://a.example/shop/tutorials/harbour.html">' in page


def test_the_domain_file_is_there_where_it_is_asked_for(make: Make) -> None:
    public = make({**WITH_ADDRESS, "shop.yaml": f"{SHOP}address: https://a.example/shop\ndomain file: yes\n"})
    assert (public / "CNAME").read_text() == "a.example\n"


def test_a_draft_stays_home(make: Make) -> None:
    public = make(
        {
            **WITH_ADDRESS,
            "projects/draft/project.yaml": "title: Zqdraft\nblank: slate\nsummary: Zqdraft\noccasions: [zqdraft]\n",
            "projects/draft/tutorial.md": "Zqdraft\n",
            "articles/draft.md": "# Zqdraft\n\nZqdraft\n",
        }
    )
    assert [path for path in public.rglob("*") if path.is_file() and b"qdraft" in path.read_bytes()] == []
    assert list(public.rglob("*draft*")) == []


def test_a_new_name_keeps_the_old_address_and_the_feeds_id(make: Make) -> None:
    public = make(WITH_ADDRESS)
    before = ElementTree.parse(public / "feed.xml").find(f"{ATOM}entry/{ATOM}id")
    content = public.parent.parent / "content"
    (content / "projects/harbour").rename(content / "projects/quay")
    log = FILES["press-log/2026.csv"].replace(",harbour,", ",quay,")
    public = make(
        {
            **{name: None for name in FILES if "harbour" in name},
            "shop.yaml": WITH_ADDRESS["shop.yaml"],
            "projects/quay/project.yaml": f"{SHARED}was: [harbour]\n",
            "press-log/2026.csv": log,
            "projects/harbour/photos/set.jpg": None,
        }
    )
    after = ElementTree.parse(public / "feed.xml").find(f"{ATOM}entry/{ATOM}id")
    assert before is not None
    assert after is not None
    assert before.text == after.text
    old = (public / "tutorials/harbour.html").read_text()
    assert '<meta http-equiv="refresh" content="0; url=quay.html">' in old
    assert '<link rel="canonical" href="https://a.example/shop/tutorials/quay.html">' in old
    assert "harbour.html" not in (public / "sitemap.xml").read_text()


def test_a_paid_link_says_so_in_the_list_in_the_text_and_at_the_top(make: Make) -> None:
    public = make(
        {
            "blanks/slate.yaml": FILES["blanks/slate.yaml"] + "link: https://p.example/?a=1&b=2\npaid link: yes\n",
            "projects/harbour/project.yaml": SHARED.replace("tutorial: yes,", "tutorial: yes, supplies: yes,"),
            "projects/harbour/tutorial.md": "From [them](https://p.example/?a=1&b=2), or [others](https://q.example/).\n",
            "articles/one.md": "# One\n\nFrom [them](https://p.example/?a=1&b=2).\n",
            "articles/one.yaml": "share: yes\n",
            "articles/two.md": "# Two\n\nFrom [others](https://q.example/).\n",
            "articles/two.yaml": "share: yes\n",
        }
    )
    for name in ("tutorials/harbour.html", "articles/one.html"):
        page = (public / name).read_text()
        links = {unescape(to): rel for to, rel in re.findall(r'<a href="(https?://[^"]*)" rel="([^"]*)"', page)}
        assert links["https://p.example/?a=1&b=2"] == "noopener sponsored"
        assert links.get("https://q.example/", "noopener") == "noopener"
        assert page.index("Some links on this page are paid links") < page.index('href="https://p.example')
    plain = (public / "articles/two.html").read_text()
    assert "sponsored" not in plain
    assert "paid links" not in plain


def test_a_film_is_a_link_with_a_still_and_nothing_of_it_is_loaded(make: Make) -> None:
    public = make({"projects/harbour/project.yaml": f"{SHARED}video: https://films.example/v/1\n"})
    page = (public / "tutorials/harbour.html").read_text()
    assert 'class="film-link" href="https://films.example/v/1"' in page
    assert "at films.example" in page
    assert "<iframe" not in page


def test_tutorials_like_it_are_named_by_material_and_by_occasion(make: Make) -> None:
    def other(blank: str, occasion: str) -> str:
        return f"title: T {blank} {occasion}\nblank: {blank}\noccasions: [{occasion}]\nshare: {{tutorial: yes}}\n"

    public = make(
        {
            "blanks/mug.yaml": "name: Mug\nsubstrate: ceramic\n",
            "projects/harbour/project.yaml": f"{SHARED}occasions: [wedding]\n",
            **{f"projects/{name}/tutorial.md": "Text.\n" for name in ("both", "slate", "wedding", "neither")},
            "projects/both/project.yaml": other("slate", "wedding"),
            "projects/slate/project.yaml": other("slate", "birthday"),
            "projects/wedding/project.yaml": other("mug", "Wedding"),
            "projects/neither/project.yaml": other("mug", "birthday"),
        }
    )
    page = (public / "tutorials/harbour.html").read_text()
    related = page[page.index("More like it") :]
    assert re.findall(r'work-name"><a href="(\w+)\.html', related) == ["both", "slate", "wedding"]
    group = (public / "for/wedding.html").read_text()
    assert sorted(re.findall(r'work-name"><a href="\.\./tutorials/(\w+)\.html', group)) == [
        "both",
        "harbour",
        "wedding",
    ]
