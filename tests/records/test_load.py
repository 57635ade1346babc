"""A whole content folder: what its records name must exist, inside it; every problem comes back."""

import os
import time

import pytest

from maker_site.records import Severity, load

LEAVES = "leaves the folder it should stay in; write a path inside it, like photos/front.jpg"
PROJECT = "title: Harbour\nblank: coaster\n"
HEADING = "date,blank,press,temperature,time,pressed,good"
ROW = "2026-04-18,coaster,clam,200 C,5 min,4,3"
LOG = "press-log/2026.csv"
IN_PROJECT = "projects/harbour/project.yaml"
WRITE_UP = "projects/harbour/tutorial.md"
PHOTO = "projects/harbour/photos/front.jpg"


def told(root):
    return [(each.file, each.line, each.field, each.message) for each in load(root).problems]


def test_smallest_workshop_has_no_problems(workshop):
    findings = load(workshop())
    assert findings.problems == ()
    found = findings.workshop
    assert (found.shop.name, *found.blanks, *found.presses, *found.supplies, *found.projects) == (
        "Bench", "coaster", "clam", "tape", "harbour",
    )  # fmt: skip
    assert len(found.pressings) == 1
    assert found.method_of(found.projects["harbour"]) == "sublimation"
    assert found.project_folder(found.projects["harbour"]) == found.root / "projects" / "harbour"
    assert (found.articles, found.about) == ({}, None)


class TestFolder:
    def test_without_a_shop(self, workshop):
        findings = load(workshop({"shop.yaml": None}))
        assert findings.workshop is None
        assert [(each.file, each.line, each.message) for each in findings.problems] == [
            ("shop.yaml", 0, "there is no shop.yaml in this folder; write one with “name” and “currency” in it")
        ]

    def test_empty(self, tmp_path):
        assert [each.file for each in load(tmp_path).problems] == ["shop.yaml"]

    def test_that_is_not_there(self, tmp_path):
        findings = load(tmp_path / "nowhere")
        assert findings.workshop is None
        assert findings.problems[0].message.startswith("there is no folder “")

    def test_shop_alone_is_a_workshop(self, tmp_path):
        (tmp_path / "shop.yaml").write_text("name: Bench\ncurrency: GBP\n", encoding="utf-8")
        findings = load(tmp_path)
        assert findings.problems == ()
        assert (findings.workshop.projects, findings.workshop.pressings) == ({}, ())

    def test_problems_of_all_files_come_together(self, workshop):
        root = workshop(
            {
                "shop.yaml": "name: Bench\n",
                "blanks/coaster.yaml": "substrate: slate\n",
                "presses/clam.yaml": "nmae: x\n",
                LOG: f"{HEADING}\n{ROW.replace('200 C', 'hot')}\n",
            }
        )
        assert [(file, field) for file, _, field, _ in told(root)] == [
            ("blanks/coaster.yaml", "name"),
            (LOG, "temperature"),
            ("presses/clam.yaml", "name"),
            ("presses/clam.yaml", "nmae"),
            ("shop.yaml", "currency"),
        ]

    @pytest.mark.parametrize(
        ("name", "message"),
        [
            ("shop.yml", "“shop.yml” is not read; did you mean “shop.yaml”?"),
            ("blank/x.yaml", "“blank” is not read; did you mean “blanks”?"),
            ("presslog/x.csv", "“presslog” is not read; did you mean “press-log”?"),
        ],
    )
    def test_names_near_to_known_ones_are_questioned(self, workshop, name, message):
        findings = load(workshop({name: ""}))
        assert [(each.message, each.severity) for each in findings.problems] == [(message, Severity.CAUTION)]
        assert findings.workshop is not None

    @pytest.mark.parametrize(
        ("name", "right"),
        [
            ("blanks/mug.yml", "mug.yaml"),
            ("blanks/mug.YAML", "mug.yaml"),
            ("press-log/2025.CSV", "2025.csv"),
            ("press-log/2025.xlsx", "2025.csv"),
            ("articles/paper.markdown", "paper.md"),
        ],
    )
    def test_endings_near_to_known_ones_are_questioned(self, workshop, name, right):
        findings = load(workshop({name: ""}))
        assert [(each.file, each.message) for each in findings.problems] == [
            (name, f"this file is not read; save it as {right}")
        ]
        assert findings.workshop is not None

    def test_hidden_files_and_files_set_aside_are_not_read(self, workshop):
        spoiled = {f"{where}{mark}x{end}": "]" for where, end in
                   [("blanks/", ".yaml"), ("press-log/", ".csv"), ("articles/", ".md")]
                   for mark in (".", "._", "_")}  # fmt: skip
        assert load(workshop(spoiled)).problems == ()

    @pytest.mark.parametrize(
        ("name", "advice"),
        [("blanks/slate coaster.yaml", "slate-coaster"), ("articles/a&b.md", "a-b"), ("blanks/-x.yaml", "x")],
    )
    def test_names_that_are_no_ids(self, workshop, name, advice):
        ((file, _, _, message),) = told(workshop({name: "# x\n"}))
        assert file == name
        assert message.endswith(f"can't be the name of a record; use letters, digits and hyphens, like {advice}")

    def test_record_as_file_and_as_folder(self, workshop):
        text = "name: x\nsubstrate: slate\n"
        ((file, _, _, message),) = told(workshop({"blanks/mug.yaml": text, "blanks/mug/blank.yaml": text}))
        assert (file, message) == ("blanks/mug.yaml", "the record “mug” is there twice: as a file and as a folder")

    def test_folders_without_their_record(self, workshop):
        root = workshop({"blanks/mug/sheet.jpg": "", "projects/boat/photos/a.jpg": "", "projects/plate.yaml": ""})
        assert [(file, message) for file, _, _, message in told(root)] == [
            ("blanks/mug", "there is no blank.yaml in this folder"),
            ("projects/boat", "there is no project.yaml in this folder; a project is projects/boat/project.yaml"),
            ("projects/plate", "there is no project.yaml in this folder; a project is projects/plate/project.yaml"),
        ]

    def test_pictures_beside_a_blank(self, workshop):
        root = workshop({"blanks/mug/blank.yaml": "name: x\nsubstrate: ceramic\n", "blanks/mug/sheet.jpg": ""})
        assert load(root).workshop.blanks["mug"].folder_pictures == ("sheet.jpg",)


class TestText:
    def test_byte_that_is_not_utf8(self, workshop):
        ((file, line, field, message),) = told(
            workshop({"shop.yaml": b"name: x\r\ncurrency: GBP\r\nline: caf\xe9\r\n"})
        )
        assert (file, line, field) == ("shop.yaml", 3, "")
        assert message == "line 3 holds a byte that is not UTF-8 text (hexadecimal e9); save the file as UTF-8"

    @pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be"])
    def test_encodings_of_spreadsheets_and_editors(self, workshop, encoding):
        mark = {"utf-16-le": b"\xff\xfe", "utf-16-be": b"\xfe\xff"}.get(encoding, b"")
        row = f"{HEADING},note\n{ROW},café\n".replace(",", "\t")
        shop = "name: Café\ncurrency: GBP\n"
        findings = load(workshop({LOG: mark + row.encode(encoding), "shop.yaml": mark + shop.encode(encoding)}))
        assert findings.problems == ()
        assert findings.workshop.pressings[0].note == "café"
        assert findings.workshop.shop.name == "Café"

    def test_half_a_sign_of_utf16(self, workshop):
        ((file, _, _, message),) = told(workshop({"shop.yaml": b"\xff\xfen\0a"}))
        assert file == "shop.yaml"
        assert message.endswith("save the file as UTF-8")

    def test_file_that_is_too_large(self, workshop):
        root = workshop({"about.md": b"x" * (8 * 1024 * 1024 + 1)})
        assert told(root) == [("about.md", 0, "", "the file is larger than 8 MB; is it text?")]

    def test_pipe_in_place_of_a_file(self, workshop):
        root = workshop({"shop.yaml": None})
        os.mkfifo(root / "shop.yaml")  # reading it would wait for ever
        assert told(root) == [("shop.yaml", 0, "", "this is not a file")]

    def test_folder_in_place_of_a_file(self, workshop):
        assert told(workshop({"shop.yaml": None, "shop.yaml/x": ""})) == [("shop.yaml", 0, "", "this is not a file")]

    @pytest.mark.parametrize("text", ["name: [\n", "- a\n"])
    def test_file_that_is_no_record_is_one_problem(self, workshop, text):
        """What such a file lacks besides is not worth a sentence for each field."""
        findings = load(workshop({"blanks/odd.yaml": text}))
        assert [each.file for each in findings.problems] == ["blanks/odd.yaml"]

    def test_crlf_lines_are_counted_right(self, workshop):
        root = workshop({IN_PROJECT: "# note\r\ntitle: x\r\nblank: coster\r\n"})
        assert told(root) == [(IN_PROJECT, 3, "blank", "there is no blank “coster”; did you mean “coaster”?")]


class TestReferences:
    @pytest.mark.parametrize(
        ("changes", "found"),
        [
            ({IN_PROJECT: "title: x\nblank: slat\n"},
             (IN_PROJECT, 2, "blank", "there is no blank “slat”; add it, or correct the name")),
            ({IN_PROJECT: PROJECT + "supplies:\n  - {supply: tap, use: 1}\n"},
             (IN_PROJECT, 4, "supplies 1: supply", "there is no supply “tap”; did you mean “tape”?")),
            ({IN_PROJECT: PROJECT + "stack:\n  - pad\n  - tape\n  - blnk\n"},
             (IN_PROJECT, 6, "stack 3", "there is no layer or supply “blnk”; did you mean “blank”?")),
            ({IN_PROJECT: PROJECT + "artwork:\n  - file: artwork/a.png\n"},
             (IN_PROJECT, 4, "artwork 1: file", "there is no file “artwork/a.png” in projects/harbour")),
            ({IN_PROJECT: PROJECT + "photos:\n  - file: photos/frnt.jpg\n", PHOTO: ""},
             (IN_PROJECT, 4, "photos 1: file",
              "there is no file “photos/frnt.jpg” in projects/harbour; did you mean “front.jpg”?")),
            ({IN_PROJECT: PROJECT + "photos:\n  - file: photos\n", PHOTO: ""},
             (IN_PROJECT, 4, "photos 1: file", "“photos” is not a file")),
            ({IN_PROJECT: PROJECT + f"photos:\n  - file: {'x' * 300}.jpg\n"},
             (IN_PROJECT, 4, "photos 1: file", f"there is no file “{'x' * 80}…” in projects/harbour")),
            ({IN_PROJECT: PROJECT + "share:\n  menu:\n    photo: photos/front.jpg\n"
              "photos:\n  - file: photos/front.jpg\n",
              PHOTO: ""},
             (IN_PROJECT, 5, "share: menu: photo", "“photos/front.jpg” is not a shared photo of this project")),
            ({LOG: f"{HEADING},project\n{ROW},harbor\n"},
             (LOG, 2, "project", "there is no project “harbor”; did you mean “harbour”?")),
            ({LOG: f"{HEADING}\n{ROW.replace('coaster', 'coater')}\n"},
             (LOG, 2, "blank", "there is no blank “coater”; did you mean “coaster”?")),
            ({LOG: f"{HEADING}\n{ROW.replace('clam', 'clan')}\n"},
             (LOG, 2, "press", "there is no press “clan”; did you mean “clam”?")),
            ({LOG: f"{HEADING},stack\n{ROW},pad > tapes\n"},
             (LOG, 2, "stack", "there is no layer or supply “tapes”; did you mean “tape”?")),
            ({LOG: f"{HEADING},project,photo\n{ROW},harbour,photos/front.jpg\n"},
             (LOG, 2, "photo", "there is no file “photos/front.jpg” in projects/harbour")),
            ({WRITE_UP: "\n\n## Press\nSee ![it](photos/frnt.jpg) here\n", PHOTO: ""},
             (WRITE_UP, 4, "", "there is no file “photos/frnt.jpg” in projects/harbour; did you mean “front.jpg”?")),
            ({"articles/paper.md": "\n# Paper\n\n\nSee ![it](photos/a.jpg)\n"},
             ("articles/paper.md", 5, "", "there is no file “photos/a.jpg” in articles")),
            ({"articles/paper.md": "Paper\n=====\n"},
             ("articles/paper.md", 1, "", "the article has no title; begin it with a line like “# Reading the paper”")),
            ({"articles/paper.yaml": "share: yes\n"},
             ("articles/paper.yaml", 0, "", "there is no paper.md beside it")),
            ({"articles/paper.md": "# Paper\n", "articles/paper.yaml": "share: yes\npublishd: 2026-01-01\n"},
             ("articles/paper.yaml", 2, "publishd", "“publishd” is not a field here; did you mean “published”?")),
        ],
    )  # fmt: skip
    def test_what_is_named_must_be_there(self, workshop, changes, found):
        findings = load(workshop(changes))
        assert findings.workshop is None
        assert [(each.file, each.line, each.field, each.message) for each in findings.problems] == [found]

    @pytest.mark.parametrize(
        ("changes", "found"),
        [
            ({"blanks/coaster.yaml": "name: x\nsubstrate: slate\nbought:\n  - {lot: A7, count: 3}\n",
              LOG: f"{HEADING},lot\n{ROW},A8\n"},
             (LOG, 2, "lot", "no lot “A8” of coaster was bought; known are A7")),
            ({LOG: f"{HEADING},face\n{ROW},Down\n"},
             (LOG, 2, "face",
              "“down” is used both ways; write print up (the blank lies face down) or print down")),
            ({LOG: f"{HEADING}\n{ROW.replace('200 C', '2000 C')}\n"},
             (LOG, 2, "temperature",
              "“2000 C” is hotter than anything pressed; is it in F, or a figure too long?")),
            ({LOG: f"{HEADING},defects\n{ROW},ghosting\n"},
             (LOG, 2, "defects", "“ghosting” hides several faults: double image (it moved), stain from elsewhere "
              "(an old sheet) or pale all over (a fade); write the one it was")),
            ({IN_PROJECT: PROJECT + "photos:\n  - file: photos/front.jpg\n    share: yes\n", PHOTO: ""},
             (IN_PROJECT, 4, "photos 1", "the shared photo “photos/front.jpg” has no “text” for those who can't see "
              "it, so the public copy leaves it out; write what it shows")),
            ({IN_PROJECT: PROJECT + "photos:\n  - file: photos/front.jpg\n  - file: ./photos/front.jpg\n", PHOTO: ""},
             (IN_PROJECT, 5, "photos 2: file", "the photo “photos/front.jpg” is listed twice")),
            ({IN_PROJECT: PROJECT + "share:\n  tutorial: yes\n  published: 2026-05-01\n"},
             (IN_PROJECT, 4, "share: tutorial",
              "the tutorial is shared, but there is no tutorial.md with text in it; its page has no steps yet")),
            ({IN_PROJECT: PROJECT + "share:\n  tutorial: yes\n", WRITE_UP: "## Press\n"},
             (IN_PROJECT, 4, "share: tutorial",
              "the tutorial is shared without a day, so it is in no feed and under no month; write published: and a "
              "day like 2026-05-01 under share")),
            ({IN_PROJECT: PROJECT + "share:\n  tutorial: yes\n  published: 2026-05-01\n", WRITE_UP: " \n\n"},
             (IN_PROJECT, 4, "share: tutorial",
              "the tutorial is shared, but there is no tutorial.md with text in it; its page has no steps yet")),
        ],
    )  # fmt: skip
    def test_what_is_doubtful_is_a_caution(self, workshop, changes, found):
        findings = load(workshop(changes))
        assert findings.workshop is not None
        assert findings.errors == ()
        assert [(each.file, each.line, each.field, each.message) for each in findings.problems] == [found]

    def test_record_that_could_not_be_read_is_not_called_missing(self, workshop):
        root = workshop(
            {
                "blanks/coaster.yaml": "name: x\n",
                "presses/clam.yaml": b"\xff\xff",
                "supplies/tape.yaml": "name: x\n",
                "blanks/mug/blank.yaml": "name: x\n",
                "projects/boat/project.yaml": "title: x\n",
                IN_PROJECT: PROJECT + "stack: [tape]\n",
                LOG: f"{HEADING},project\n{ROW},boat\n{ROW.replace('coaster', 'mug')},\n",
            }
        )
        assert [file for file, _, _, _ in told(root)] == [
            "blanks/coaster.yaml", "blanks/mug/blank.yaml", "presses/clam.yaml", "projects/boat/project.yaml",
            "supplies/tape.yaml",
        ]  # fmt: skip

    def test_thousands_of_wrong_names_are_answered_in_seconds(self, workshop):
        projects = {f"projects/harbour-coasters-{n}/project.yaml": PROJECT for n in range(300)}
        rows = "\n".join(f"{ROW},harbor-coasters-{n % 1500}" for n in range(3000))
        root = workshop({**projects, LOG: f"{HEADING},project\n{rows}\n"})
        started = time.process_time()
        found = load(root).problems
        assert time.process_time() - started < 5
        assert len(found) == 3000
        assert found[0].message == "there is no project “harbor-coasters-0”; did you mean “harbour-coasters-0”?"

    @pytest.mark.parametrize(
        "picture",
        [
            "photos/front.jpg",
            "./photos/front.jpg",
            "photos/front.jpg 'a title'",
            "<photos/front.jpg>",
            "https://example.org/a.jpg",
            "data:image/gif;base64,R0lG",
        ],
    )
    def test_pictures_that_are_there_or_elsewhere(self, workshop, picture):
        assert load(workshop({WRITE_UP: f"![it]({picture})\n", PHOTO: ""})).problems == ()

    @pytest.mark.parametrize("written", ["photos/a%20b.jpg", "<photos/a b.jpg>"])
    def test_pictures_with_a_space(self, workshop, written):
        assert load(workshop({WRITE_UP: f"![it]({written})\n", "projects/harbour/photos/a b.jpg": ""})).problems == ()

    def test_picture_with_brackets_in_its_name(self, workshop):
        changes = {WRITE_UP: "![it](photos/a(1).jpg)\n", "projects/harbour/photos/a(1).jpg": ""}
        assert load(workshop(changes)).problems == ()


class TestPathsThatLeave:
    @pytest.mark.parametrize(
        "path",
        ["../shop.yaml", "photos/../../x", "/etc/passwd", "C:/x.jpg", "C:x.jpg", "..\\x.jpg", "\\\\host\\x.jpg",
         "\\x.jpg", "//host/x.jpg"],
    )  # fmt: skip
    @pytest.mark.parametrize("field", ["artwork", "photos"])
    def test_in_a_record(self, workshop, path, field):
        root = workshop({IN_PROJECT: PROJECT + f"{field}:\n  - file: '{path}'\n"})
        assert told(root) == [(IN_PROJECT, 4, f"{field} 1: file", f"“{path}” {LEAVES}")]

    @pytest.mark.parametrize(
        "path", ["../a.jpg", "%2e%2e/a.jpg", "/etc/a.jpg", "C:/a.jpg", "//host/a.jpg", "..\\a.jpg"]
    )
    def test_in_a_write_up(self, workshop, path):
        ((file, line, _, message),) = told(workshop({WRITE_UP: f"![it]({path})\n"}))
        assert (file, line) == (WRITE_UP, 1)
        assert message.endswith(LEAVES)

    def test_nought_of_the_computer_in_a_write_up(self, workshop):
        ((_, _, _, message),) = told(workshop({WRITE_UP: "![it](a\0b.jpg) ![it](a%00b.jpg)\n"}))[:1]
        assert message.endswith(LEAVES)

    FILE = "this is a link to a file outside the content folder; copy the file in instead"
    FOLDER = "this is a link to a folder outside the content folder; move the folder in instead"

    @pytest.mark.parametrize("name", ["shop.yaml", "about.md", "blanks/coaster.yaml", LOG, IN_PROJECT, WRITE_UP])
    def test_file_that_is_a_link_to_outside(self, workshop, tmp_path, name):
        root = workshop({name: None})
        (root / name).parent.mkdir(parents=True, exist_ok=True)
        (tmp_path / "outside").write_text("secret", encoding="utf-8")
        (root / name).symlink_to(tmp_path / "outside")
        found = told(root)
        assert (name, 0, "", self.FILE) in found
        assert "secret" not in str(found)

    @pytest.mark.parametrize("name", ["blanks", "presses", "supplies", "projects", "press-log", "articles"])
    def test_folder_that_is_a_link_to_outside(self, workshop, tmp_path, name):
        root = workshop()
        outside = tmp_path / "outside"
        (root / name).rename(outside) if (root / name).exists() else outside.mkdir()
        (root / name).symlink_to(outside)
        assert (name, 0, "", self.FOLDER) in told(root)

    def test_folder_of_one_record_that_is_a_link_to_outside(self, workshop, tmp_path):
        root = workshop()
        (root / "projects/harbour").rename(tmp_path / "outside")
        (root / "projects/harbour").symlink_to(tmp_path / "outside")
        assert told(root) == [(IN_PROJECT, 0, "", self.FILE)]

    @pytest.mark.parametrize("listed", [True, False])
    def test_photo_that_is_a_link_to_outside(self, workshop, tmp_path, listed):
        root = workshop({IN_PROJECT: PROJECT + ("photos: [{file: photos/front.jpg}]\n" if listed else "")})
        (tmp_path / "outside.jpg").touch()
        (root / PHOTO).parent.mkdir()
        (root / PHOTO).symlink_to(tmp_path / "outside.jpg")
        ((_, _, _, message),) = told(root)
        assert "link that leaves the content folder; copy the" in message

    def test_link_that_stays_inside_is_read(self, workshop):
        root = workshop({"blanks/coaster.yaml": None, "blanks/_plain.yaml": "name: x\nsubstrate: slate\n"})
        (root / "blanks/coaster.yaml").symlink_to("_plain.yaml")
        assert load(root).problems == ()

    def test_links_that_lead_nowhere(self, workshop):
        names = ["about.md", "blanks/mug.yaml", "press-log/2025.csv", IN_PROJECT]
        root = workshop({IN_PROJECT: None, PHOTO: ""})
        for name in names:
            (root / name).symlink_to("gone")
        (root / "blanks/round.yaml").symlink_to("round.yaml")
        found = told(root)
        assert [file for file, _, _, _ in found] == sorted([*names, "blanks/round.yaml"])
        assert all(message.startswith("the file can't be opened: ") for _, _, _, message in found)

    def test_write_up_that_is_a_link_to_nowhere(self, workshop):
        root = workshop()
        (root / WRITE_UP).symlink_to("gone")
        ((file, _, _, message),) = told(root)
        assert (file, message) == (WRITE_UP, "the file can't be opened: no such file or directory")


class TestMoney:
    @pytest.mark.parametrize(
        ("currency", "locale", "written"),
        [
            ("GBP", "en_GB", "12.50"),
            ("GBP", "en_GB", "GBP 12.50"),
            ("GBP", "en_GB", "£12.50"),
            ("EUR", "de_DE", "12,50 €"),
            ("USD", "en_GB", "$12.50"),
            ("CAD", "en_CA", "$12.50"),
        ],
    )
    def test_the_shops_currency(self, workshop, currency, locale, written):
        root = workshop({"shop.yaml": f"name: x\ncurrency: {currency}\nlocale: {locale}\nlabour: '{written}'\n"})
        assert load(root).problems == ()

    @pytest.mark.parametrize(
        ("file", "text", "line", "field"),
        [
            ("shop.yaml", "name: x\ncurrency: GBP\nfee: {fixed: USD 0.30}\n", 3, "fee: fixed"),
            ("blanks/coaster.yaml", "name: x\nsubstrate: slate\nbought:\n  - count: 3\n    paid: USD 0.30\n", 5,
             "bought 1: paid"),
            ("supplies/tape.yaml", "name: x\nkind: tape\nprice: USD 0.30\n", 3, "price"),
            (IN_PROJECT, PROJECT + "share:\n  menu:\n    price: USD 0.30\n", 5, "share: menu: price"),
            (IN_PROJECT, PROJECT + "order:\n  paid: USD 0.30\n", 4, "order: paid"),
        ],
    )  # fmt: skip
    def test_another_currency_is_refused(self, workshop, file, text, line, field):
        message = "“USD 0.30” is not in the shop's currency; write the amount in GBP"
        assert told(workshop({file: text})) == [(file, line, field, message)]


def test_shops_own_bare_figures_take_its_own_units(workshop):
    shop = "name: x\ncurrency: GBP\nprinter: {margin: 1/4}\npaper: 8.5 x 11\nunits: {length: in}\n"
    found = load(workshop({"shop.yaml": shop})).workshop.shop
    assert found.printer.margin.inches * 4 == 1
    assert found.paper.height.inches == 11


def test_records_stand_in_order_of_their_ids(workshop):
    text = "name: x\nkind: tape\n"
    root = workshop({"supplies/tape-2.yaml": text, "supplies/pad.yaml": text})  # “-” is before “.”
    assert list(load(root).workshop.supplies) == ["pad", "tape", "tape-2"]


def test_pressings_stand_by_day_then_as_written(workshop):
    def rows(*days):
        return "\n".join([HEADING, *(ROW.replace("18", day) for day in days)])

    root = workshop({"press-log/a.csv": rows("20", "02", "10"), LOG: None, "press-log/b.csv": rows("10", "01")})
    assert [(row.date.day, row.id) for row in load(root).workshop.pressings] == [
        (1, "press-log/b.csv:3"),
        (2, "press-log/a.csv:3"),
        (10, "press-log/a.csv:4"),
        (10, "press-log/b.csv:2"),
        (20, "press-log/a.csv:2"),
    ]


@pytest.mark.parametrize(
    ("text", "title", "body"),
    [
        ("# Reading the paper\nText\n", "Reading the paper", "\nText\n"),
        ("\r\n\n#  Two  words \r\n\r\nText", "Two words", "\n\n\n\r\nText"),
        ("# Closed ##\n", "Closed", "\n"),
        ("# C#\n", "C#", "\n"),
        ("# One\n\n## Two\n", "One", "\n\n## Two\n"),
        ("# One", "One", ""),
    ],
)
def test_article_has_its_title_and_keeps_its_lines(workshop, text, title, body):
    article = load(workshop({"articles/paper.md": text})).workshop.articles["paper"]
    assert (article.title, article.text) == (title, body)


def test_articles_head(workshop):
    root = workshop({"articles/a.md": "# A\n", "articles/a.yaml": "share: yes\nsummary: x\n", "articles/b.md": "# B\n"})
    articles = load(root).workshop.articles
    assert [(each.id, each.head.share, each.head.summary) for each in articles.values()] == [
        ("a", True, "x"),
        ("b", False, None),
    ]


def test_write_up_keeps_its_text(workshop):
    text = "\n    indented code\n\n## Press\r\n"
    assert load(workshop({WRITE_UP: text})).workshop.projects["harbour"].tutorial == text


def test_nothing_is_written(workshop):
    root = workshop({"shop.yaml": "name: [\n"})

    def state():
        return {path: (path.stat().st_mtime_ns, path.is_file() and path.read_bytes()) for path in root.rglob("*")}

    before = state()
    load(root)
    assert state() == before
