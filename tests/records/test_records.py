"""One record out of its file: unknown and missing fields, all problems together, each with its place and line."""

import pytest

from maker_site.records import Blank, Press, Project, Shop, Supply, Units
from maker_site.records.read_record import record_from
from maker_site.records.yaml_text import read_yaml

KINDS = {
    "a shop": (Shop, {"id": "shop"}),
    "a blank": (Blank, {"id": "x", "folder pictures": ()}),
    "a press": (Press, {"id": "x"}),
    "a supply": (Supply, {"id": "x"}),
    "a project": (Project, {"id": "x", "folder photos": (), "tutorial": None}),
}


def read(kind, text, units=None):
    model, given = KINDS[kind]
    return record_from(model, read_yaml(text, "x.yaml"), "x.yaml", given, units or Units(), kind=kind)


def problems(kind, text):
    record, found = read(kind, text)
    assert record is None
    return [(each.line, each.field, each.message) for each in found]


BLANK = "name: Coaster\nsubstrate: slate\n"
PROJECT = "title: Harbour\nblank: coaster\n"
LIST = "this should be a list, one item a line, each begun with a hyphen"
ONE = "one value was expected here, and a list or further fields were found"


@pytest.mark.parametrize(
    ("kind", "text", "found"),
    [
        ("a blank", BLANK + "thicknes: 5 mm\n",
         (3, "thicknes", "“thicknes” is not a field here; did you mean “thickness”?")),
        ("a blank", BLANK + "sheet:\n  temprature: 200 C\n",
         (4, "sheet: temprature", "“temprature” is not a field here; did you mean “temperature”?")),
        ("a blank", BLANK + "bought:\n  - count: 3\n  - count: 3\n    xyz: 3\n",
         (6, "bought 2: xyz", "“xyz” is not a field here; known are date, lot, count, paid, delivery, "
          "import charges, note")),
        ("a blank", "substrate: slate\n", (1, "name", "“name” is missing; a blank needs it")),
        ("a blank", BLANK + "bought:\n  - count: 3\n  - lot: A\n",
         (5, "bought 2: count", "“count” is missing in bought 2; a blank needs it")),
        ("a blank", BLANK + "bought: {count: 3}\n", (3, "bought", LIST)),
        ("a blank", BLANK + "bought: 24\n", (3, "bought", LIST)),
        ("a blank", BLANK + "holes: [10 x 10 mm]\n",
         (3, "holes 1", "this should hold fields of its own; known are at, diameter")),
        ("a blank", BLANK + "thickness: [5 mm]\n", (3, "thickness", ONE)),
        ("a blank", BLANK + "note: {a: b}\n", (3, "note", ONE)),
        ("a blank", BLANK + "size:\n  round\n", (3, "size", "“” is not a length; write it like 100 mm or 3 1/2 in")),
        ("a blank", BLANK + "id: y\n",
         (3, "id", "“id” is not a field of a blank: it is the file's own name or what lies beside it")),
        ("a blank", "name: '  '\nsubstrate: slate\n",
         (1, "name", "nothing is written here; write a text, or take it out")),
        ("a blank", BLANK + "link: example.org\n",
         (3, "link", "“example.org” is not a web address; write it whole, like https://example.org/page")),
        ("a blank", BLANK + "link: javascript:alert(1)\n",
         (3, "link", "“javascript:alert(1)” is not a web address; write it whole, like https://example.org/page")),
        ("a blank", BLANK + "paid link: maybe\n", (3, "paid link", "“maybe” should be yes or no")),
        ("a blank", BLANK + "low stock: -1\n", (3, "low stock", "“-1” is not a whole number")),
        ("a blank", BLANK + "coating: softt\n",
         (3, "coating", "“softt” is not a coating; write soft or hard; did you mean “soft”?")),
        ("a blank", "name: x\nsubstrate: <b>\n",
         (2, "substrate", "“<b>” is not a substrate; write a word or two like slate or stainless steel")),
        ("a project", PROJECT + "folder photos: [a]\n",
         (3, "folder photos", "“folder photos” is not a field of a project: it is the file's own name or what lies "
          "beside it")),
        ("a project", PROJECT + "tutorial: yes\n",
         (3, "tutorial", "“tutorial” is not a field of a project: it is the file's own name or what lies beside it")),
        ("a project", PROJECT + "share:\n  menu:\n    prize: 24\n",
         (5, "share: menu: prize", "“prize” is not a field here; did you mean “price”?")),
        ("a project", PROJECT + "share: yes\n",
         (3, "share", "this should hold fields of its own; known are tutorial, setting, supplies, published, "
          "updated, menu")),
        ("a project", PROJECT + "occasions: {a: b}\n", (3, "occasions", LIST)),
        ("a project", PROJECT + "artwork:\n  - file: ../secret.png\n",
         (4, "artwork 1: file",
          "“../secret.png” leaves the folder it should stay in; write a path inside it, like photos/front.jpg")),
        ("a project", PROJECT + "photos:\n  - file: .\n",
         (4, "photos 1: file", "“.” is a folder; write the path of a file, like photos/front.jpg")),
        ("a press", "name: x\nresolution: {temperature: 0 C}\n",
         (2, "resolution: temperature", "a step of temperature must be more than nothing")),
        ("a supply", "name: x\nkind: paper\n",
         (2, "kind", "“paper” is not a kind of supply; write ink, transfer paper, vinyl, film, tape, protective paper, "
          "cover sheet, pad, packaging or other; did you mean “transfer paper” or “protective paper”?")),
        ("a shop", "name: x\ncurrency: GPB\n",
         (2, "currency", "“GPB” is not a currency; write its three letters by ISO 4217, like GBP, EUR or USD; "
          "did you mean “GBP”?")),
        ("a shop", "name: x\ncurrency: GBP\nlocale: English\n",
         (3, "locale", "“English” is not a language and country; write it like en_GB, en_US or de_DE")),
        ("a shop", "name: x\ncurrency: GBP\nunits: {temperature: K}\n",
         (3, "units: temperature", "“K” is not a unit of temperature; write C or F")),
        ("a shop", "name: x\ncurrency: GBP\nunits: mm\n",
         (3, "units", "this should hold fields of its own; known are temperature, length, pressure")),
    ],
)  # fmt: skip
def test_what_is_wrong_is_said_with_its_place_and_line(kind, text, found):
    assert problems(kind, text) == [found]


def test_unknown_field_offers_only_what_the_maker_may_write():
    ((_, _, message),) = problems("a project", PROJECT + "qqqq: 1\n")
    assert message.startswith("“qqqq” is not a field here; known are title, made, blank, ")
    assert "folder photos" not in message
    assert "tutorial" not in message
    assert " id," not in message


def test_all_problems_come_together():
    found = problems("a blank", "nmae: x\nsubstrate: slate\nsubstrate: wood\nsize: big\nsheet:\n  time: soon\n")
    assert sorted((line, field) for line, field, _ in found) == [
        (1, "name"), (1, "nmae"), (3, "substrate"), (4, "size"), (6, "sheet: time"),
    ]  # fmt: skip


def test_field_names_are_read_with_hyphens_underscores_and_capitals():
    blank, found = read("a blank", "Name: x\nSUBSTRATE: Slate\nprint_area: 9 x 9 cm\nCorner-Radius: 3 mm\n")
    assert found == []
    assert (blank.substrate, blank.print_area.width.mm, blank.corner_radius.mm) == ("slate", 90, 3)


@pytest.mark.parametrize(
    ("written", "meant"),
    [("MDF", "hardboard"), ("Aluminum", "aluminium"), ("Stainless  steel", "stainless steel"), ("Jute", "jute")],
)
def test_substrates_are_an_open_list_with_one_spelling_each(written, meant):
    blank, _ = read("a blank", f"name: x\nsubstrate: {written}\n")
    assert blank.substrate == meant


def test_list_may_be_written_in_one_line():
    project, _ = read("a project", PROJECT + "occasions: wedding, new home\nstack: pad > transfer > blank\n")
    assert (project.occasions, project.stack) == (("wedding", "new home"), ("pad", "transfer", "blank"))


def test_values_are_exact_and_keep_what_was_typed():
    shop, _ = read("a shop", "name: x\ncurrency: gbp\nlocale: en-gb\nlabour: 14.00\nmargin: 50 %\nlow stock: 007\n")
    assert (shop.currency, shop.locale, shop.labour.typed, shop.low_stock) == ("GBP", "en_GB", "14.00", 7)
    assert (str(shop.labour.value), shop.margin.of_one * 2) == ("14.00", 1)


def test_units_are_read_in_any_case():
    shop, found = read("a shop", "name: x\ncurrency: GBP\nunits: {temperature: f, length: IN, pressure: kpa}\n")
    assert found == []
    assert (shop.units.temperature, shop.units.length, shop.units.pressure) == ("F", "in", "kPa")


def test_bare_figures_take_the_shops_units():
    units = Units(temperature="F", length="in", pressure="psi")
    text = BLANK + "size: 4 x 4\nlimit: 400\nsheet: {temperature: 390 to 400, pressure: 40, time: 60}\n"
    blank, found = read("a blank", text, units)
    assert found == []
    assert (blank.size.width.inches, blank.limit.fahrenheit, blank.sheet.temperature.low.fahrenheit) == (4, 400, 390)
    assert blank.sheet.time.low.seconds == 60


def test_records_are_frozen():
    blank, _ = read("a blank", BLANK)
    with pytest.raises(ValueError, match="frozen"):
        blank.name = "other"


def test_record_knows_the_line_of_each_value():
    blank, _ = read("a blank", BLANK + "bought:\n  - count: 3\n    paid: 9\n")
    assert blank.origin.file == "x.yaml"
    assert blank.origin.line(("bought", 0, "paid")) == 5
    assert blank.origin.line(("bought", 0, "delivery")) == 4  # absent: the line of what is around it
    assert blank.origin.line(("size",)) == 1


def test_photos_beside_the_listed_ones():
    model, given = KINDS["a project"]
    tree = read_yaml(PROJECT + "photos: [{file: ./photos/a.jpg}]\n", "x.yaml")
    found = {**given, "folder photos": ("photos/a.jpg", "photos/b.jpg")}
    project, _ = record_from(model, tree, "x.yaml", found, Units(), kind="a project")
    assert project.folder_photos == ("photos/b.jpg",)


def test_every_amount_is_found_with_its_place():
    shop, _ = read("a shop", "name: x\ncurrency: GBP\nlabour: 14\nfee: {percent: 6.5 %, fixed: 0.30}\n")
    assert [(place, amount.typed) for place, amount in shop.amounts()] == [
        (("labour",), "14"),
        (("fee", "fixed"), "0.30"),
    ]


@pytest.mark.parametrize("written", ["1400", "1400 W", "1400W", "1.4 kW", "1,4 kW", "1400 watts"])
def test_watts_as_on_the_plate(written):
    press, found = read("a press", f"name: Clam\nwatts: {written}\n")
    assert found == []
    assert press.watts == 1400


@pytest.mark.parametrize("written", ["0", "lots", "-3 W", "1/3 kW", "W"])
def test_watts_that_are_none(written):
    assert [each[1] for each in problems("a press", f"name: Clam\nwatts: {written}\n")] == ["watts"]
