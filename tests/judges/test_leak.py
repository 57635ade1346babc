"""Nothing that the maker did not choose to share is in the public copy: not a word, a figure, a picture or its data.

What may cross is listed here, field by field, and nothing else may: a new field is private until it is listed.
"""

import csv
import fnmatch
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import yaml
from PIL import Image, PngImagePlugin

from maker_site.records import (
    ArticleHead,
    Artwork,
    Blank,
    MenuEntry,
    Order,
    Photo,
    Press,
    Pressing,
    Project,
    Share,
    Shop,
    Supply,
    Use,
    load,
)
from tests.conftest import make_site_here
from tests.small_workshop import FILES, write_workshop

from .canaries import Canary, Planter, found_in

# The planted workshop is made once, by one parallel worker.
pytestmark = pytest.mark.xdist_group("planted workshop")

# Everybody may see these. `told` is a project whose tutorial and menu entry are shared and nothing more; `open` shares
# its setting and its supplies too; `kept` shares nothing, and its blank and article are used by nothing that is shared.
PUBLIC = (
    "shop: name",
    "shop: line",
    "shop: notice",
    "shop: address",
    "shop: contact",
    "shop: how to order",
    "shop: lead time",
    "shop: menu sections",
    "about: text",
    "articles/told: *",
    "articles/open: *",
    "blanks/told: name",
    "blanks/told: size",
    "blanks/told: care",
    "blanks/told: food contact",
    "blanks/open: name",
    "blanks/open: size",
    "blanks/open: care",
    "blanks/open: food contact",
    "projects/told: title",
    "projects/told: occasions",
    "projects/told: summary",
    "projects/told: time needed",
    "projects/told: pieces",
    "projects/told: video",
    "projects/told: tools",
    "projects/told: was",
    "projects/told: care",
    "projects/told: shared photo.text",
    "projects/told: shared photo.caption",
    "projects/told: share.*",
    "projects/told: write-up",
    "projects/open: title",
    "projects/open: occasions",
    "projects/open: summary",
    "projects/open: time needed",
    "projects/open: pieces",
    "projects/open: video",
    "projects/open: tools",
    "projects/open: was",
    "projects/open: care",
    "projects/open: shared photo.text",
    "projects/open: shared photo.caption",
    "projects/open: share.*",
    "projects/open: write-up",
)
# Chosen with `share: {supplies: yes}`: what a reader needs, how much of it, and the link that the maker gave.
CHOSEN_SUPPLIES = ("blanks/open: link", "projects/open: use.use", "supplies/open: name", "supplies/open: link")
# Chosen with `share: {setting: yes}`: what was set and how it came out, not when, on which lot, or a note on it.
CHOSEN_SETTING = (
    "press-log/open: temperature",
    "press-log/open: time",
    "press-log/open: pressure",
    "press-log/open: pressed",
    "press-log/open: good",
)
MAY_CROSS = PUBLIC + CHOSEN_SUPPLIES + CHOSEN_SETTING

SHARED = (138, 120, 92)
# Each private picture has a colour that no page and no shared picture has.
PRIVATE = {"artwork": (255, 0, 230), "kept photo": (0, 255, 40), "sheet": (0, 230, 255), "log photo": (255, 255, 0)}


@dataclass(frozen=True)
class Planted:
    """A workshop with a canary in every field."""

    content: Path
    canaries: list[Canary]


def may_cross(place: str) -> bool:
    """Tell whether what stands at this place is for everybody."""
    return any(fnmatch.fnmatchcase(place, allowed) for allowed in MAY_CROSS)


def draw(file: Path, colour: tuple[int, int, int], **saved: Any) -> None:
    """Draw a picture of one colour."""
    file.parent.mkdir(parents=True, exist_ok=True)
    Image.new("RGB", (640, 480), colour).save(file, **saved)


def draw_shared(planter: Planter, file: Path, place: str) -> None:
    """Draw a shared photo with everything a camera, a phone or an editor writes into it."""
    exif = Image.Exif()
    # Tags by the Exif standard (CIPA DC-008): ImageDescription, Make, Model, Artist, Copyright; then UserComment.
    for tag in (0x010E, 0x010F, 0x0110, 0x013B, 0x8298):
        exif[tag] = planter.word(f"{place} exif {tag:#06x}")
    exif.get_ifd(0x8769)[0x9286] = b"ASCII\0\0\0" + planter.word(f"{place} exif comment").encode()
    exif.get_ifd(0x8825).update({1: "N", 2: (48.0, 52.0, 31.0), 3: "W", 4: (123.0, 23.0, 36.0)})
    if file.suffix == ".png":
        told = PngImagePlugin.PngInfo()
        told.add_text("Comment", planter.word(f"{place} text"))
        draw(file, SHARED, pnginfo=told, exif=exif)
        return
    xmp = f"<x:xmpmeta xmlns:x='adobe:ns:meta/'>{planter.word(f'{place} xmp')}</x:xmpmeta>".encode()
    draw(file, SHARED, exif=exif, xmp=xmp, comment=planter.word(f"{place} comment").encode())
    # IPTC-IIM 2:105 Headline in an image resource block 0x0404, in a JPEG segment APP13.
    headline = planter.word(f"{place} iptc").encode()
    data = b"\x1c\x02\x69" + len(headline).to_bytes(2, "big") + headline
    data += b"\0" * (len(data) % 2)
    block = b"Photoshop 3.0\0" + b"8BIM\x04\x04\0\0" + len(data).to_bytes(4, "big") + data
    raw = file.read_bytes()
    file.write_bytes(raw[:2] + b"\xff\xed" + (len(block) + 2).to_bytes(2, "big") + block + raw[2:])


def draw_document(planter: Planter, file: Path, place: str) -> None:
    """Draw an artwork as a PDF with everything that a drawing program writes beside the picture."""
    file.parent.mkdir(parents=True, exist_ok=True)
    told = {name: planter.word(f"{place} {name}") for name in ("title", "author", "subject", "keywords", "producer")}
    Image.new("RGB", (90, 60), PRIVATE["artwork"]).save(file, "PDF", **told)


def write(file: Path, record: dict[str, Any], planter: Planter | None = None) -> None:
    """Write a record."""
    file.parent.mkdir(parents=True, exist_ok=True)
    text = yaml.safe_dump(record, sort_keys=False, allow_unicode=True)
    remark = f"# {planter.word(f'{file.stem}: comment in a record')}\n" if planter else ""
    file.write_text(remark + text, encoding="utf-8")


def plant_project(planter: Planter, content: Path, name: str, share: dict[str, str], ids: dict[str, str]) -> None:
    """Plant a project with its blank, its supply, its row in the log and its pictures."""
    place = f"projects/{name}"
    folder = content / "projects" / ids[name]
    photos = []
    for number, ending in enumerate(("jpg", "png")):
        file = f"photos/{planter.word(f'{place}: photo file')}.{ending}"
        draw_shared(planter, folder / file, f"{place}: photo {number}")
        photos.append(planter.record(Photo, f"{place}: shared photo", file=file, share="yes" if share else "no"))
    kept = planter.record(Photo, f"{place}: kept photo", share="no")
    artwork = planter.record(Artwork, f"{place}: artwork")
    draw(folder / kept["file"], PRIVATE["kept photo"])
    draw(folder / artwork["file"], PRIVATE["artwork"])
    draw_document(planter, folder / "artwork" / "drawn.pdf", f"{place}: artwork pdf")
    drawn = f"<!-- {planter.word(f'{place}: artwork comment')} -->"
    svg = f"<svg xmlns='http://www.w3.org/2000/svg' width='9mm' height='9mm'>{drawn}<path d='M0 0h9v9H0z'/></svg>"
    (folder / "artwork" / "drawn.svg").write_text(svg, encoding="utf-8")
    draw(folder / "photos" / f"{planter.word(f'{place}: unlisted photo')}.jpg", PRIVATE["kept photo"])
    menu = planter.record(MenuEntry, f"{place}: share.menu", photo=photos[0]["file"]) if share else None
    record = planter.record(
        Project,
        place,
        blank=ids[f"blank of {name}"],
        artwork=[artwork, {"file": "artwork/drawn.pdf"}, {"file": "artwork/drawn.svg"}],
        photos=[*photos, kept],
        supplies=[planter.record(Use, f"{place}: use", supply=ids[f"supply of {name}"])],
        stack=["pad", "transfer", "blank", ids[f"supply of {name}"]],
        order=planter.record(Order, f"{place}: order"),
        share=planter.record(Share, f"{place}: share", menu=menu, **share) if share else None,
        video_still=photos[0]["file"] if share else None,
    )
    write(folder / "project.yaml", record, planter)
    text = f"{planter.word(f'{place}: write-up')}\n\n## Press\n\n<!-- {planter.word(f'{place}: comment')} -->\n"
    (folder / "tutorial.md").write_text(text, encoding="utf-8")


def plant_blank(planter: Planter, content: Path, name: str, ids: dict[str, str]) -> dict[str, Any]:
    """Plant a blank with its supplier's sheet as a picture."""
    folder = content / "blanks" / ids[f"blank of {name}"]
    record = planter.record(Blank, f"blanks/{name}")
    write(folder / "blank.yaml", record, planter)
    draw(folder / "sheet.jpg", PRIVATE["sheet"], comment=planter.word(f"blanks/{name}: sheet comment").encode())
    return record


def plant_pressing(planter: Planter, content: Path, name: str, ids: dict[str, str], lot: str) -> dict[str, str]:
    """Plant a row of the log; its lot is the one that was bought."""
    row = planter.record(
        Pressing,
        f"press-log/{name}",
        project=ids[name],
        blank=ids[f"blank of {name}"],
        press=ids["press"],
        lot=lot,
        stack="pad > transfer > blank",
        good="70001",
    )
    draw(content / "projects" / ids[name] / row["photo"], PRIVATE["log photo"])
    return row


@pytest.fixture(scope="module")
def planted(tmp_path_factory) -> Planted:
    """A small workshop with a canary in every field of every kind of record, and in photos and file names."""
    planter, content = Planter(), tmp_path_factory.mktemp("planted") / "content"
    ids = {name: planter.word(f"{name}: id") for name in ("press", "kept", "blank of kept", "supply of kept")}
    ids |= {name: planter.word(f"{name}: id") for name in ("blank of told", "supply of told")}
    # Of these the ids stand in the addresses of the pages that are shared.
    ids |= {"told": "told", "open": "open", "blank of open": "blank-of-open", "supply of open": "supply-of-open"}
    chosen = {
        "told": {"tutorial": "yes", "setting": "no", "supplies": "no"},
        "open": {"tutorial": "yes", "setting": "yes", "supplies": "yes"},
        "kept": {},
    }
    shop = planter.record(Shop, "shop", currency="GBP", locale="en_GB", units={}, markup=None)
    write(content / "shop.yaml", shop, planter)
    about = f"# About\n\n{planter.word('about: text')}\n\n<!-- {planter.word('about: comment')} -->\n"
    (content / "about.md").write_text(about, encoding="utf-8")
    write(content / "presses" / f"{ids['press']}.yaml", planter.record(Press, "presses/press"))
    rows = []
    for name, share in chosen.items():
        blank = plant_blank(planter, content, name, ids)
        supply = content / "supplies" / f"{ids[f'supply of {name}']}.yaml"
        write(supply, planter.record(Supply, f"supplies/{name}"))
        plant_project(planter, content, name, share, ids)
        rows.append(plant_pressing(planter, content, name, ids, blank["bought"][0]["lot"]))
        article = content / "articles" / f"{name if share else planter.word('kept article: id')}.md"
        article.parent.mkdir(exist_ok=True)
        text = f"# {planter.word(f'articles/{name}: title')}\n\n{planter.word(f'articles/{name}: text')}\n"
        text += f"\n<!-- {planter.word(f'comment in an article of {name}')} -->\n"
        article.write_text(text, encoding="utf-8")
        head = planter.record(ArticleHead, f"articles/{name}", share="yes" if share else "no")
        write(article.with_suffix(".yaml"), head)
    (content / "press-log").mkdir()
    with (content / "press-log" / "2026.csv").open("w", encoding="utf-8", newline="") as file:
        table = csv.DictWriter(file, list(rows[0]))
        table.writeheader()
        table.writerows(rows)
    return Planted(content, planter.canaries)


@pytest.fixture(scope="module")
def planted_site(planted: Planted, tmp_path_factory) -> Path:
    """Both copies of the planted workshop."""
    out = tmp_path_factory.mktemp("planted-site") / "site"
    make_site_here(planted.content, out)
    return out


def test_the_planted_workshop_is_read_whole(planted: Planted):
    findings = load(planted.content)
    assert [problem for problem in findings.problems if problem in findings.errors] == []
    assert len(planted.canaries) > 250


def test_no_two_fields_have_the_same_canary(planted: Planted):
    written = [canary.written for canary in planted.canaries]
    assert len(set(written)) == len(written)


def test_every_canary_is_found_where_it_has_leaked_and_only_it(planted: Planted, tmp_path):
    page = tmp_path / "page.html"
    for canary in planted.canaries:
        page.write_text(f"<!DOCTYPE html><title>Slate</title><p>Press at {canary.written}, then cool.</p>")
        assert set(found_in(tmp_path, [canary])) == {canary.place}, canary
        assert set(found_in(tmp_path, planted.canaries)) == {canary.place}, canary


def test_a_word_is_found_in_a_comment_a_picture_and_a_file_name(tmp_path):
    planter = Planter()
    (tmp_path / "page.html").write_text(f"<!DOCTYPE html><!-- {planter.word('comment').upper()} -->")
    draw_shared(planter, tmp_path / f"{planter.word('file name')}.jpg", "jpeg")
    draw_shared(planter, tmp_path / "photo.png", "png")
    assert set(found_in(tmp_path, planter.canaries)) == {canary.place for canary in planter.canaries}


def test_the_workshop_copy_has_what_the_public_copy_must_not(planted: Planted, planted_site: Path):
    found = found_in(planted_site / "workshop", planted.canaries)
    wanted = {
        "projects/kept: title",
        "projects/kept: note",
        "projects/told: for",
        "projects/told: order.names",
        "blanks/told: supplier",
        "blanks/kept: code",
        "press-log/kept: note",
        "press-log/told: temperature",
    }
    assert wanted - set(found) == set()


@pytest.fixture(scope="module")
def crossed(planted: Planted, planted_site: Path) -> dict[str, set[str]]:
    """The places whose canaries are in the public copy, each with the files that they were found in."""
    return found_in(planted_site / "public", planted.canaries)


def test_what_is_shared_is_in_the_public_copy(crossed: dict[str, set[str]]):
    wanted = {"shop: name", "about: text", "articles/told: title", "projects/told: title", "projects/open: write-up"}
    assert wanted - set(crossed) == set()


def test_nothing_that_was_not_shared_is_in_the_public_copy(crossed: dict[str, set[str]]):
    assert {place: files for place, files in crossed.items() if not may_cross(place)} == {}


def private_share(file: Path) -> dict[str, float]:
    """Give the share (0 to 1) of a picture's points that have the colour of each private picture."""
    with Image.open(file) as picture:
        points = np.asarray(picture.convert("RGB").resize((64, 64)), dtype=np.int16)
    return {name: float((abs(points - colour) < 48).all(axis=2).mean()) for name, colour in PRIVATE.items()}


@pytest.mark.parametrize("name", PRIVATE)
def test_a_private_picture_is_known_by_its_colour(tmp_path, name):
    draw(tmp_path / "a.jpg", PRIVATE[name], quality=40)
    assert private_share(tmp_path / "a.jpg") == {each: float(each == name) for each in PRIVATE}


def test_no_private_picture_is_in_the_public_copy_and_no_picture_says_more_than_its_points(planted_site: Path):
    endings = (".jpg", ".jpeg", ".png", ".webp", ".avif", ".gif")
    pictures = [file for file in (planted_site / "public").rglob("*") if file.suffix in endings]
    assert pictures
    for file in pictures:
        assert max(private_share(file).values()) < 0.01, file
        with Image.open(file) as picture:
            assert dict(picture.getexif()) == {}, file
            assert {"exif", "xmp", "comment", "photoshop", "XML:com.adobe.xmp"} & set(picture.info) == set(), file


def test_every_file_of_the_public_copy_is_of_a_kind_that_is_looked_into(planted_site: Path):
    known = {
        "",
        ".html",
        ".css",
        ".js",
        ".json",
        ".xml",
        ".txt",
        ".svg",
        ".jpg",
        ".png",
        ".webp",
        ".avif",
        ".ico",
        ".pdf",
    }
    assert {file.suffix for file in (planted_site / "public").rglob("*") if file.is_file()} <= known


def test_the_domain_file_is_the_only_file_without_an_ending(planted_site: Path):
    found = [file.name for file in (planted_site / "public").rglob("*") if file.is_file() and not file.suffix]
    assert found == ["CNAME"]


def test_what_programs_read_was_made_and_holds_public_words_alone(planted: Planted, planted_site: Path):
    for name in ("feed.xml", "sitemap.xml", "search/words.js", "index.html"):
        found = found_in_file(planted_site / "public" / name, planted.canaries)
        assert found, name
        assert {place for place in found if not may_cross(place)} == set(), name


def found_in_file(file: Path, canaries: list[Canary]) -> set[str]:
    text = file.read_text(encoding="utf-8")
    return {canary.place for canary in canaries if canary.word and canary.pattern.search(text)}


SHARED_WORKSHOP = {
    "shop.yaml": "name: Test Bench\ncurrency: GBP\naddress: https://a.example/\n",
    "articles/one.md": "# One\n\nText.\n",
    "articles/one.yaml": "share: yes\npublished: 2026-05-02\n",
}


def test_the_public_copy_is_the_same_to_the_byte_whether_or_not_there_is_something_private(tmp_path):
    """Neither ids nor names, neither counts nor days nor order of what is private leave a trace."""
    log = FILES["press-log/2026.csv"]
    private = {
        "press-log/later.csv": log.partition("\n")[0]
        + "".join(
            f"\n2026-09-{day:02},kept-{day},kept,other,190 C,4:00,light,print down,9,1,blurred" for day in range(1, 9)
        ),
        "blanks/kept.yaml": "name: Kept\nsubstrate: ceramic\nbought: [{date: 2026-10-01, count: 7}]\n",
        "presses/other.yaml": "name: Other\n",
        "supplies/kept.yaml": "name: Kept\nkind: tape\npaid link: yes\nlink: https://kept.example/\n",
        "articles/kept.md": "# Kept\n\nText.\n",
        **{
            f"projects/kept-{day}/project.yaml": f"title: Kept {day}\nblank: kept\nmade: 2026-09-{day:02}\n"
            "occasions: [kept]\nwas: [kept-before]\n".replace("before", f"before-{day}")
            for day in range(1, 9)
        },
        "projects/kept-1/tutorial.md": "Text.\n",
    }
    copies = []
    for name, more in (("without", {}), ("with", private)):
        content = write_workshop(tmp_path / name / "content", {**SHARED_WORKSHOP, **more})
        make_site_here(content, tmp_path / name / "site")
        public = tmp_path / name / "site" / "public"
        copies.append({file.relative_to(public): file.read_bytes() for file in public.rglob("*") if file.is_file()})
    assert set(copies[0]) == set(copies[1])
    assert [str(file) for file in copies[0] if copies[0][file] != copies[1][file]] == []
